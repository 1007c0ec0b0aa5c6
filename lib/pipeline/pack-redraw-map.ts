import type { RednessPlanes } from '../measure/measure-input';
import type { MapGrid } from '../rectify/millimetre-map';
import { DRAWN_OUTLINES, type DrawnOutline } from '../segment/edge-cost';
import type { RedrawMap } from './redraw-map';

/** The first bytes of a packed map: what it is, and how it is packed. */
const MARK = 'foldwatch redraw map 1\n';
const HEAD_LENGTH_BYTES = 4;
/** Costs lie between 0 and 1, kept to 1/255; index and a* to a hundredth, far below their noise. */
const COST_STEPS = 255;
const PER_UNIT = 100;
const NONE = -32_768;
const MOST = 32_767;

interface Head {
  readonly grid: MapGrid;
  readonly input: Omit<RedrawMap['input'], 'redness'>;
  readonly redness: Omit<RednessPlanes, 'grid' | 'excessEi' | 'deltaA'> | null;
  readonly hasDeltaA: boolean;
}

/**
 * A redraw map as bytes for a file of our own.
 *
 * @param map of one photo
 * @returns a head in JSON, then one plane after the other
 * @example packRedrawMap(map).length
 */
export function packRedrawMap({ input, costs }: RedrawMap): Uint8Array {
  const { redness, ...rest } = input;
  const known = redness && { referenceUEi: redness.referenceUEi, referenceUDeltaA: redness.referenceUDeltaA };
  const head: Head = { grid: costs.erythema.grid, input: rest, redness: known, hasDeltaA: Boolean(redness?.deltaA) };
  const text = new TextEncoder().encode(JSON.stringify(head));
  const length = new Uint8Array(HEAD_LENGTH_BYTES);
  new DataView(length.buffer).setUint32(0, text.length, true);
  const planes = [redness?.excessEi, redness?.deltaA].flatMap((plane) => (plane ? [bytesOf(plane)] : []));
  return joined([new TextEncoder().encode(MARK), length, text, ...planes, ...DRAWN_OUTLINES.map((outline) => Uint8Array.from(costs[outline].cost, (cost) => Math.round(COST_STEPS * cost)))]);
}

/**
 * The way back.
 *
 * @param bytes as `packRedrawMap` wrote them
 * @returns the map; planes to a hundredth of their unit
 * @throws RangeError for bytes that are no redraw map: our own files are damaged, or of another version
 * @example unpackRedrawMap(packRedrawMap(map)).input.scale
 */
export function unpackRedrawMap(bytes: Uint8Array): RedrawMap {
  const mark = new TextDecoder().decode(bytes.subarray(0, MARK.length));
  if (mark !== MARK) throw new RangeError(`unpackRedrawMap: the bytes must begin with ${JSON.stringify(MARK)}, received ${JSON.stringify(mark)}`);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const headEnd = MARK.length + HEAD_LENGTH_BYTES + view.getUint32(MARK.length, true);
  const { grid, input, redness, hasDeltaA } = JSON.parse(new TextDecoder().decode(bytes.subarray(MARK.length + HEAD_LENGTH_BYTES, headEnd))) as Head;
  const pixels = grid.widthPx * grid.heightPx;
  let at = headEnd;
  const nextPlane = (): Float32Array => {
    const plane = Float32Array.from({ length: pixels }, (_, i) => valueOf(view.getInt16(at + 2 * i, true)));
    at += 2 * pixels;
    return plane;
  };
  const planes = redness && { grid, ...redness, excessEi: nextPlane(), deltaA: hasDeltaA ? nextPlane() : null };
  const costs = Object.fromEntries(
    DRAWN_OUTLINES.map((outline, place) => [outline, { grid, cost: Float32Array.from(bytes.subarray(at + place * pixels, at + (place + 1) * pixels), (cost) => cost / COST_STEPS) }]),
  ) as Record<DrawnOutline, RedrawMap['costs'][DrawnOutline]>;
  return { input: { ...input, redness: planes }, costs };
}

function bytesOf(plane: Float32Array): Uint8Array {
  const bytes = new Uint8Array(2 * plane.length);
  const view = new DataView(bytes.buffer);
  plane.forEach((value, i) => view.setInt16(2 * i, Number.isNaN(value) ? NONE : Math.max(-MOST, Math.min(MOST, Math.round(PER_UNIT * value))), true));
  return bytes;
}

const valueOf = (stored: number): number => (stored === NONE ? NaN : stored / PER_UNIT);

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}
