/**
 * Where blood was added to the skin. Each redness is a chain of overlapping discs on the unrolled skin, joined smoothly
 * and roughened; its share falls from 1 to 0 across the outline like a blurred edge and is one half on it.
 */
import { randomSource } from '../random/random-source';
import { layeredNoise } from '../random/value-noise';
import type { RednessSpec } from '../phantom-spec';
import type { NailUnit } from './nail-unit';
import { upperTail } from './smooth';

export interface RednessField {
  /** 0…1 of the plateau at a place on the unrolled skin. */
  share(alongMm: number, acrossMm: number): number;
  readonly addedBloodShare: number;
}

interface Disc {
  readonly alongMm: number;
  readonly acrossMm: number;
  readonly radiusMm: number;
}

/** 10–90 % width of a blurred step over the standard deviation of its blur. */
const EDGE_WIDTH_PER_SIGMA = 2.563;
const JOIN_MM = 1.1;

function foldDiscs(redness: RednessSpec, nail: NailUnit, seed: number): Disc[] {
  const random = randomSource(seed, 'redness');
  const side = (redness.where === 'treatedFold' ? nail.treated : -nail.treated) as -1 | 1;
  const rough = layeredNoise(seed + 77, 2);
  const count = 14;
  const discs = Array.from({ length: count }, (_, i): Disc => {
    const along = i / (count - 1);
    const point = nail.marginPoint(side, redness.from + (redness.to - redness.from) * along);
    const taper = 0.55 + 0.45 * Math.sin(Math.PI * Math.min(1, Math.max(0, 0.12 + 0.76 * along)));
    return { ...point, radiusMm: redness.widthMm * taper * (1 + 0.45 * redness.raggedness * rough(along * 3.1, 0)) };
  });
  if (redness.tongueMm > 0) {
    const root = nail.marginPoint(side, nail.cornerShare + 0.35 * (1 - nail.cornerShare));
    const lean = random.between(-0.25, 0.2) * side;
    const steps = Math.ceil(redness.tongueMm);
    for (let i = 1; i <= steps; i++) {
      const radiusMm = Math.max(1.1, redness.widthMm * 0.75 * (1 - (0.6 * i) / steps));
      discs.push({ alongMm: root.alongMm + i, acrossMm: root.acrossMm + lean * i, radiusMm });
    }
  }
  return discs;
}

function spotDiscs(redness: RednessSpec, seed: number): Disc[] {
  const random = randomSource(seed, 'spot');
  const [alongMm, acrossMm] = redness.spot ?? [30, 0];
  return Array.from({ length: 4 }, () => ({
    alongMm: alongMm + random.normal() * redness.widthMm * 0.4,
    acrossMm: acrossMm + random.normal() * redness.widthMm * 0.4,
    radiusMm: redness.widthMm * random.between(0.6, 1),
  }));
}

/** The field of one redness. */
export function rednessField(redness: RednessSpec, nail: NailUnit, seed: number): RednessField {
  const discs = redness.where === 'elsewhere' ? spotDiscs(redness, seed) : foldDiscs(redness, nail, seed);
  const sigmaMm = redness.edgeMm / EDGE_WIDTH_PER_SIGMA;
  const rough = layeredNoise(seed + 131, 2);
  const roughMm = 0.9 * redness.raggedness;
  const farMm = 3.5 * sigmaMm + roughMm;
  const outer = discs.map((disc) => disc.radiusMm + farMm);
  const alongs = discs.map((disc, i) => [disc.alongMm - outer[i], disc.alongMm + outer[i]]).flat();
  const lowMm = Math.min(...alongs);
  const highMm = Math.max(...alongs);
  return {
    addedBloodShare: redness.addedBloodShare,
    share(alongMm, acrossMm) {
      if (alongMm < lowMm || alongMm > highMm) return 0;
      let outside = 1e3;
      for (const disc of discs) {
        const u = alongMm - disc.alongMm, v = acrossMm - disc.acrossMm;
        const away = Math.sqrt(u * u + v * v) - disc.radiusMm;
        const overlap = Math.max(0, JOIN_MM - Math.abs(away - outside)) / JOIN_MM;
        outside = Math.min(outside, away) - (overlap * overlap * JOIN_MM) / 4;
      }
      if (outside > farMm) return 0;
      return upperTail((outside + roughMm * rough(alongMm * 0.42, acrossMm * 0.42)) / sigmaMm);
    },
  };
}
