/** A photo drawn at random from what a patient at home might send. The ranges are judgement; common practice where noted. */
import { LIGHT_NAMES } from './light/light-spectra';
import type { CameraSpec, CardSpec, LightSpec, NailSpec, PhantomSpec, PoseSpec, RednessSpec, Side, SkinSpec, ToeSpec, WoundSpec } from './phantom-spec';
import { randomSource, type RandomSource } from './random/random-source';
import { ITA_RANGE_DEG, SKIN_CLASSES, type SkinClass } from './skin/skin-class';

/** Widths of toes that lie freely in each cut of the notch, half, mm. */
const NOTCH_CUTS = [['own-S', 10.2], ['own-M', 11.8], ['own-L', 14]] as const;

export interface Overrides {
  readonly subject?: PhantomSpec['subject'];
  readonly toe?: Partial<ToeSpec>;
  readonly skinClass?: SkinClass;
  readonly wound?: Partial<WoundSpec>;
  readonly pose?: Partial<PoseSpec>;
  readonly light?: Partial<LightSpec>;
  readonly camera?: Partial<CameraSpec>;
  readonly card?: Partial<CardSpec> | null;
  readonly ground?: PhantomSpec['ground'];
  readonly groundTone?: number;
  readonly faults?: PhantomSpec['faults'];
}

function randomSkin(random: RandomSource, skinClass: SkinClass): SkinSpec {
  return {
    skinClass,
    itaDeg: random.between(...ITA_RANGE_DEG[skinClass]),
    melaninSpread: random.between(0.02, 0.1),
    bloodSpread: random.between(0.05, 0.16),
    hairCount: random.chance(0.45) ? random.whole(4, 45) : 0,
    freckleCount: random.chance(0.3) ? random.whole(2, 14) : 0,
  };
}

function randomNail(random: RandomSource, toeHalfWidthMm: number): NailSpec {
  return {
    halfWidthMm: toeHalfWidthMm * random.between(0.58, 0.72),
    freeEdgeMm: random.between(2.6, 4.2),
    lengthMm: toeHalfWidthMm * random.between(1.1, 1.4),
    whiteEdgeMm: random.between(0.3, 1.6),
    lunulaMm: random.chance(0.7) ? random.between(1.5, 3.8) : 0,
    cornerMm: random.between(3.2, 5.5),
    curveRadiusMm: toeHalfWidthMm * random.between(0.95, 1.45),
    foldHeightMm: random.between(0.8, 1.7),
    thicknessMm: random.between(0.35, 0.8),
    polish: random.chance(0.05) ? [random.between(0.05, 0.6), random.between(0.02, 0.3), random.between(0.02, 0.4)] : null,
  };
}

/** The body of a toe of a seed. */
export function randomToe(seed: number, skinClass?: SkinClass): ToeSpec {
  const random = randomSource(seed, 'toe');
  const halfWidthMm = random.between(9.2, 13);
  return {
    seed,
    foot: random.pick(['left', 'right'] as const),
    halfWidthMm,
    flatness: random.between(0.72, 0.9),
    squareness: random.between(2.1, 2.6),
    tipLengthMm: random.between(8.5, 12),
    bendMm: random.between(-2.5, 2.5),
    wrinkleDepthMm: random.between(0.08, 0.3),
    nail: randomNail(random, halfWidthMm),
    skin: randomSkin(random, skinClass ?? random.pick(SKIN_CLASSES)),
  };
}

function foldRedness(random: RandomSource, where: 'treatedFold' | 'untreatedFold'): RednessSpec {
  const from = random.between(0, 0.3);
  return {
    where,
    addedBloodShare: random.between(0.012, 0.042),
    widthMm: random.between(1.6, 6.5),
    edgeMm: random.between(1, 4),
    from,
    to: random.between(Math.max(0.5, from + 0.25), 1),
    raggedness: random.between(0.1, 1),
    tongueMm: random.chance(0.3) ? random.between(3, 12) : 0,
    spot: null,
  };
}

/** Redness of any kind: at the treated fold mostly, also none, on both sides, or somewhere that has nothing to do with it. */
export function randomRedness(random: RandomSource): RednessSpec[] {
  const kind = random.next();
  const all: RednessSpec[] = kind < 0.14 ? [] : [foldRedness(random, 'treatedFold')];
  if (random.chance(0.1)) all.push(foldRedness(random, 'untreatedFold'));
  if (random.chance(0.12)) {
    const spot = random.pick([[random.between(28, 36), random.between(-6, 6)], [random.between(2, 4), random.between(-5, 5)], [random.between(22, 30), random.between(-10, 10)]] as const);
    all.push({ ...foldRedness(random, 'treatedFold'), where: 'elsewhere', widthMm: random.between(1.5, 4.5), tongueMm: 0, spot });
  }
  return all;
}

/** The operated side on some day; 2–3 mm of plate removed, as seen from above, is common practice. */
export function randomWound(random: RandomSource): WoundSpec {
  const open = random.chance(0.75);
  return {
    side: random.pick(['left', 'right'] as const),
    stripMm: random.between(2, 3.1),
    redness: randomRedness(random),
    swellingMm: random.chance(0.6) ? random.between(0.1, 1.3) : 0,
    rawShare: open ? random.between(0.3, 1) : 0,
    granulationMm: open && random.chance(0.3) ? random.between(0.9, 2.1) : 0,
    sloughShare: open && random.chance(0.4) ? random.between(0.1, 0.6) : 0,
    driedBloodCount: random.chance(0.45) ? random.whole(1, 5) : 0,
    crustCount: random.chance(0.35) ? random.whole(1, 3) : 0,
    macerationMm: random.chance(0.25) ? random.between(0.6, 2.6) : 0,
    iodine: random.chance(0.1) ? random.between(0.25, 0.8) : 0,
    wetness: random.between(0, 0.9),
  };
}

function randomPose(random: RandomSource): PoseSpec {
  return {
    tipGapMm: random.between(1.2, 4.5),
    sideShiftMm: random.between(-1, 1),
    yawDeg: random.between(-7, 7),
    pitchDeg: random.between(-4, 8),
    rollDeg: random.between(-7, 7),
    heightOffsetMm: random.between(-2.5, 3.5),
  };
}

function randomLight(random: RandomSource): LightSpec {
  const key = random.pick(LIGHT_NAMES);
  return {
    key,
    ambient: random.chance(0.25) ? random.pick(LIGHT_NAMES) : key,
    ambientShare: random.between(0.3, 0.7),
    elevationDeg: random.between(38, 75),
    azimuthDeg: random.between(0, 360),
    spreadDeg: random.between(2, 14),
    gradient: random.between(0, 0.5),
    gradientAzimuthDeg: random.between(0, 360),
    shadowEdge: null,
  };
}

/** Phones whose picture holds the wanted scale at the wanted distance; "2×" lenses and crops are part of it. */
function randomCamera(random: RandomSource): CameraSpec {
  const [longPx, shortPx] = random.pick([[1440, 1080], [1600, 1200], [1632, 1224], [1920, 1440], [2016, 1512]] as const);
  const upright = random.chance(0.5);
  const [widthPx, heightPx] = upright ? [shortPx, longPx] : [longPx, shortPx];
  const distanceMm = random.between(180, 380);
  const wantedPxPerMm = random.between(7, Math.min(15, shortPx / 92));
  const focal35Mm = (wantedPxPerMm * distanceMm * Math.hypot(36, 24)) / Math.hypot(longPx, shortPx);
  return {
    phoneSeed: random.whole(1, 9),
    widthPx,
    heightPx,
    focal35Mm: Math.round(focal35Mm * 10) / 10,
    distanceMm,
    tiltDeg: random.between(0, 1) ** 1.3 * 33,
    azimuthDeg: random.between(0, 360),
    rollDeg: random.chance(0.85) ? random.normal() * 9 : random.between(0, 360),
    aimMm: [random.between(-6, 6), random.between(-5, 9)],
    k1: random.between(-0.05, 0.05),
    k2: random.between(-0.02, 0.02),
    opticsBlurPx: random.between(0.5, 1.1),
    defocusPx: random.chance(0.2) ? random.between(1, 1.6) : 0,
    motionPx: random.chance(0.15) ? random.between(1, 2) : 0,
    motionDeg: random.between(0, 180),
    vignetting: random.between(0, 0.25),
    exposure: random.between(0.72, 1.02),
    whiteBalance: [random.between(0.92, 1.12), random.between(0.88, 1.08)],
    fullWell: random.between(2500, 12000),
    readNoise: random.between(0.0008, 0.003),
    toneContrast: random.between(0, 0.8),
    toneShoulder: random.between(0, 0.5),
    saturation: random.between(0.95, 1.18),
    denoise: random.between(0, 0.8),
    sharpen: random.between(0, 0.9),
    jpegQuality: random.whole(75, 92),
    orientationTag: random.pick([1, 1, 1, 3, 6, 8] as const),
    captureTime: `2026-03-${String(random.whole(1, 28)).padStart(2, '0')}T${String(random.whole(7, 21)).padStart(2, '0')}:${random.whole(10, 59)}:${random.whole(10, 59)}`,
  };
}

function randomCard(random: RandomSource, serialSeed: number, toeHalfWidthMm: number): CardSpec {
  const fitting = NOTCH_CUTS.find(([, widest]) => toeHalfWidthMm <= widest) ?? NOTCH_CUTS[2];
  return {
    face: fitting[0],
    serialSeed,
    printScale: 1,
    paperWhite: random.between(0.8, 0.92),
    inkBlack: random.between(0.025, 0.07),
    inkGamma: random.between(0.85, 1.2),
    cast: [random.between(0.96, 1), random.between(0.97, 1), random.between(0.93, 1)],
  };
}

/** A spec from a seed. What `overrides` says stands; everything else is drawn, and each part by its own stream. */
export function randomSpec(seed: number, overrides: Overrides = {}): PhantomSpec {
  const part = (purpose: string): RandomSource => randomSource(seed, purpose);
  const toe = { ...randomToe(seed, overrides.skinClass), ...overrides.toe };
  const ground = part('ground');
  const card = overrides.card === null ? null : { ...randomCard(part('card'), seed, toe.halfWidthMm), ...overrides.card };
  return {
    seed,
    subject: overrides.subject ?? { kind: 'toe' },
    toe,
    wound: { ...randomWound(part('wound')), ...overrides.wound },
    pose: { ...randomPose(part('pose')), ...overrides.pose },
    light: { ...randomLight(part('light')), ...overrides.light },
    camera: { ...randomCamera(part('camera')), ...overrides.camera },
    card,
    ground: overrides.ground ?? ground.pick(['wood', 'tiles', 'cloth', 'towel', 'paper'] as const),
    groundTone: overrides.groundTone ?? ground.between(0.35, 1.2),
    faults: overrides.faults ?? [],
  };
}

/** The other side. */
export const otherSide = (side: Side): Side => (side === 'left' ? 'right' : 'left');
