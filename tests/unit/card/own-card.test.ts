import { describe, expect, it } from 'vitest';
import { ARUCO_4X4_50 } from '../../../lib/card/aruco-4x4-50';
import { MARKER_MODULE_MM, NOTCH_WIDTHS_MM, QR_MODULE_MM, QR_QUIET_MODULES } from '../../../lib/card/constants';
import { notchOutline } from '../../../lib/card/notch-outline';
import { OWN_CARD } from '../../../lib/card/own-card';
import type { PointMm } from '../../../lib/units';
import { sampleDrawing } from './sample-drawing';

interface Box {
  readonly name: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const box = (name: string, centre: PointMm, widthMm: number, heightMm = widthMm): Box => ({
  name,
  left: centre.acrossMm - widthMm / 2,
  right: centre.acrossMm + widthMm / 2,
  top: centre.downMm - heightMm / 2,
  bottom: centre.downMm + heightMm / 2,
});

/** Clear distance between two upright boxes; negative where they overlap. */
function gapMm(a: Box, b: Box): number {
  const across = Math.max(a.left - b.right, b.left - a.right);
  const down = Math.max(a.top - b.bottom, b.top - a.bottom);
  return Math.max(across, down);
}

const markers = OWN_CARD.fiducials.map((f) => box(`fiducial ${f.id}`, f.centre, f.sizeMm));
const patches = OWN_CARD.patches.map((p) => box(p.name, p.centre, p.widthMm, p.heightMm));
const qr = OWN_CARD.qr === null ? [] : [box('qr', OWN_CARD.qr.centre, OWN_CARD.qr.sizeMm)];
const inkBoxes = sampleDrawing().map(({ name, rings }): Box => {
  const points = rings.flat();
  const across = points.map((p) => p.acrossMm);
  const down = points.map((p) => p.downMm);
  return { name, left: Math.min(...across), right: Math.max(...across), top: Math.min(...down), bottom: Math.max(...down) };
});

const pairs = <T>(all: readonly T[]): [T, T][] => all.flatMap((a, i) => all.slice(i + 1).map((b): [T, T] => [a, b]));
const SLACK_MM = 1e-9;

describe('our own card', () => {
  it('keeps two modules of white between every fiducial and the edge of the card, and the widest notch', () => {
    const white = 2 * MARKER_MODULE_MM - SLACK_MM;
    for (const marker of markers) {
      const toEdge = Math.min(marker.left, marker.top, OWN_CARD.widthMm - marker.right, OWN_CARD.heightMm - marker.bottom);
      expect(toEdge, marker.name).toBeGreaterThanOrEqual(white);
      for (const { acrossMm, downMm } of OWN_CARD.notch) {
        expect(gapMm(marker, box('notch', { acrossMm, downMm }, 0)), marker.name).toBeGreaterThanOrEqual(white);
      }
    }
  });

  it('keeps at least one module of white round every fiducial from everything else that is printed', () => {
    const tooNear = markers.flatMap((marker) =>
      inkBoxes
        .filter((ink) => ink.name !== marker.name && !ink.name.startsWith('cut line') && gapMm(marker, ink) < MARKER_MODULE_MM - SLACK_MM)
        .map((ink) => `${marker.name} – ${ink.name}`),
    );
    expect(tooNear).toEqual([]);
  });

  it('lets no two of fiducials, patches and code overlap', () => {
    const overlaps = pairs([...markers, ...patches, ...qr]).filter(([a, b]) => gapMm(a, b) < 0.5);
    expect(overlaps.map(([a, b]) => `${a.name} – ${b.name}`)).toEqual([]);
  });

  it('leaves the white patches and the quiet zone of the code (4 modules, ISO/IEC 18004) free of ink', () => {
    const white = OWN_CARD.patches.filter((p) => p.kind === 'white').map((p) => box(p.name, p.centre, p.widthMm, p.heightMm));
    const onWhite = white.flatMap((patch) => inkBoxes.filter((ink) => ink.name !== 'frame' && !ink.name.startsWith('cut line') && gapMm(patch, ink) < 0));
    expect(onWhite.map((ink) => ink.name)).toEqual([]);
    const inQuiet = inkBoxes.filter((ink) => !/^(qr|cut line)/.test(ink.name) && gapMm(qr[0], ink) < QR_QUIET_MODULES * QR_MODULE_MM - SLACK_MM);
    // The marker in the corner lies 5 modules away, the one below exactly 4, the bar above 4.25.
    expect(inQuiet.map((ink) => ink.name)).toEqual([]);
  });

  it('keeps everything on the card and nothing but cut lines in the widest notch', () => {
    for (const ink of inkBoxes) {
      // Flat ends of the cut lines stand exactly on the lower edge.
      expect(Math.min(ink.left, ink.top, OWN_CARD.widthMm - ink.right, OWN_CARD.heightMm - ink.bottom), ink.name).toBeGreaterThan(-0.01);
    }
    const inNotch = [...markers, ...patches, ...qr].filter((b) =>
      OWN_CARD.notch.some(({ acrossMm, downMm }) => gapMm(b, box('notch', { acrossMm, downMm }, 0)) < 1),
    );
    expect(inNotch.map((b) => b.name)).toEqual([]);
  });

  it('surrounds the toe: fiducials to both sides, above, and below the nail', () => {
    const left = OWN_CARD.fiducials.filter((f) => f.centre.acrossMm < OWN_CARD.notch[0].acrossMm);
    const right = OWN_CARD.fiducials.filter((f) => f.centre.acrossMm > OWN_CARD.notch[OWN_CARD.notch.length - 1].acrossMm);
    for (const side of [left, right]) {
      expect(side).toHaveLength(4);
      const down = side.map((f) => f.centre.downMm).sort((a, b) => a - b);
      // The nail lies in the upper half of the notch, which is 36 mm deep.
      expect(down[0]).toBeLessThan(18);
      expect(down.filter((mm) => mm > 36).length).toBeGreaterThanOrEqual(2);
    }
  });

  it('has three cut lines within one another, the widest of which is the notch', () => {
    expect(OWN_CARD.notch).toEqual(notchOutline(NOTCH_WIDTHS_MM.L));
    const tops = (['S', 'M', 'L'] as const).map((size) => Math.min(...notchOutline(NOTCH_WIDTHS_MM[size]).map((p) => p.downMm)));
    expect(tops).toEqual([...tops].sort((a, b) => b - a));
    expect(tops[2]).toBeCloseTo(18, 9);
  });

  it('has whites and greys to both sides of the notch and along the top', () => {
    const neutral = OWN_CARD.patches.filter((p) => p.kind !== 'colour');
    const zones = [
      neutral.filter((p) => p.centre.acrossMm < 25 && p.centre.downMm > 18),
      neutral.filter((p) => p.centre.acrossMm > 60 && p.centre.downMm > 18),
      neutral.filter((p) => p.centre.downMm < 18),
    ];
    for (const zone of zones) expect(new Set(zone.map((p) => p.kind))).toEqual(new Set(['white', 'grey']));
  });

  it('has no patch smaller than 4 mm, no name twice', () => {
    expect(Math.min(...OWN_CARD.patches.flatMap((p) => [p.widthMm, p.heightMm]))).toBeGreaterThanOrEqual(4);
    expect(new Set(OWN_CARD.patches.map((p) => p.name)).size).toBe(OWN_CARD.patches.length);
  });
});

const turned = (bits: number): number =>
  [...Array(16).keys()].reduce((out, place) => {
    const [row, column] = [Math.floor(place / 4), place % 4];
    return out | (((bits >> (15 - place)) & 1) << (15 - (column * 4 + 3 - row)));
  }, 0);
const mirrored = (bits: number): number =>
  [...Array(16).keys()].reduce((out, place) => {
    const [row, column] = [Math.floor(place / 4), place % 4];
    return out | (((bits >> (15 - place)) & 1) << (15 - (row * 4 + 3 - column)));
  }, 0);
const turns = (bits: number): number[] => [bits, turned(bits), turned(turned(bits)), turned(turned(turned(bits)))];
const apart = (a: number, b: number): number => [...(a ^ b).toString(2)].filter((bit) => bit === '1').length;
const distance = (a: number, b: number): number => Math.min(...turns(b).map((turn) => apart(a, turn)));

describe('the ids of our own card', () => {
  const markerBits = OWN_CARD.fiducials.map((f) => ARUCO_4X4_50[f.id]);

  it('differ in at least 5 of 16 bits, turned or mirrored', () => {
    for (const [a, b] of pairs(markerBits)) {
      expect(distance(a, b)).toBeGreaterThanOrEqual(5);
      expect(distance(a, mirrored(b))).toBeGreaterThanOrEqual(5);
    }
  });

  it('differ from themselves in at least 6 bits when turned and 4 when mirrored', () => {
    for (const bits of markerBits) {
      expect(Math.min(...turns(bits).slice(1).map((turn) => apart(bits, turn)))).toBeGreaterThanOrEqual(6);
      expect(distance(bits, mirrored(bits))).toBeGreaterThanOrEqual(4);
    }
  });

  it('cannot be mistaken in a mirror for any marker of the dictionary, one bit corrected', () => {
    for (const bits of markerBits) {
      for (const other of ARUCO_4X4_50) expect(distance(other, mirrored(bits))).toBeGreaterThanOrEqual(3);
    }
  });
});
