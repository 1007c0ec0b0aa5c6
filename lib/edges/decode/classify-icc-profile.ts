/**
 * Which colour space an embedded profile describes, by its own numbers and not by its name (names are translated,
 * abbreviated and sometimes wrong). ICC.1:2022: header, tag table, XYZType, curveType, parametricCurveType.
 */
export type IccClass = 'srgb' | 'display-p3' | 'cmyk' | 'other-profile';

/**
 * Red, green and blue primaries in the D50 connection space, X Y Z each. sRGB: IEC 61966-2-1 adapted by Bradford;
 * Display P3: SMPTE EG 432-1 primaries with D65, adapted by Bradford. Read from the profiles published at color.org.
 */
const PRIMARIES_D50 = {
  srgb: [0.4361, 0.2225, 0.0139, 0.3851, 0.7169, 0.0971, 0.1431, 0.0606, 0.7141],
  'display-p3': [0.5151, 0.2412, -0.0011, 0.2919, 0.6922, 0.0419, 0.1572, 0.0666, 0.7841],
} as const;

/** Makers round and adapt a little differently: the published profiles agree within 0.001. */
const PRIMARY_TOLERANCE = 0.002;

/** The sRGB curve (IEC 61966-2-1) at these signals; a power 2.2 curve gives 0.0063 at the first and is told apart. */
const CURVE_POINTS = [
  { signal: 0.1, light: 0.01002 },
  { signal: 0.5, light: 0.21404 },
] as const;
const CURVE_TOLERANCE = 0.001;

const HEADER_BYTES = 128;
const MAX_TAGS = 200;

/** `classifyIccProfile(bytes)` → 'display-p3'. Anything it cannot vouch for is 'other-profile'. */
export function classifyIccProfile(icc: Uint8Array): IccClass {
  const view = new DataView(icc.buffer, icc.byteOffset, icc.byteLength);
  try {
    const space = word(view, 16);
    if (space === 'CMYK') return 'cmyk';
    if (space !== 'RGB ') return 'other-profile';
    const tags = readTags(view);
    // A lookup table outranks the primaries (ICC.1:2022, 8.3): such a profile is not a plain matrix and curve.
    if (tags.has('A2B0')) return 'other-profile';
    const primaries = ['rXYZ', 'gXYZ', 'bXYZ'].flatMap((name) => readXyz(view, tags.get(name)));
    if (!['rTRC', 'gTRC', 'bTRC'].every((name) => hasSrgbCurve(view, tags.get(name)))) return 'other-profile';
    for (const name of ['srgb', 'display-p3'] as const) {
      if (PRIMARIES_D50[name].every((value, i) => Math.abs(value - primaries[i]) <= PRIMARY_TOLERANCE)) return name;
    }
    return 'other-profile';
  } catch (error) {
    // A profile that points outside itself is judged by the colour engine, which has its own rules for it.
    if (error instanceof RangeError) return 'other-profile';
    throw error;
  }
}

function word(view: DataView, at: number): string {
  return String.fromCharCode(view.getUint8(at), view.getUint8(at + 1), view.getUint8(at + 2), view.getUint8(at + 3));
}

function readTags(view: DataView): Map<string, number> {
  const tags = new Map<string, number>();
  const count = Math.min(view.getUint32(HEADER_BYTES), MAX_TAGS);
  for (let i = 0; i < count; i += 1) {
    const at = HEADER_BYTES + 4 + i * 12;
    tags.set(word(view, at), view.getUint32(at + 4));
  }
  return tags;
}

const fixed = (view: DataView, at: number): number => view.getInt32(at) / 65536;

function readXyz(view: DataView, at: number | undefined): readonly number[] {
  if (at === undefined || word(view, at) !== 'XYZ ') return [NaN, NaN, NaN];
  return [fixed(view, at + 8), fixed(view, at + 12), fixed(view, at + 16)];
}

function hasSrgbCurve(view: DataView, at: number | undefined): boolean {
  if (at === undefined) return false;
  return CURVE_POINTS.every(({ signal, light }) => Math.abs(curveAt(view, at, signal) - light) <= CURVE_TOLERANCE);
}

function curveAt(view: DataView, at: number, signal: number): number {
  const kind = word(view, at);
  if (kind === 'curv') {
    const count = view.getUint32(at + 8);
    if (count < 2) return NaN;
    const place = signal * (count - 1);
    const below = Math.floor(place);
    const low = view.getUint16(at + 12 + below * 2) / 65535;
    const high = view.getUint16(at + 12 + Math.min(below + 1, count - 1) * 2) / 65535;
    return low + (high - low) * (place - below);
  }
  // Parametric type 3 is the one that sRGB and Display P3 use: Y = (aX + b)^g from X = d on, cX below.
  if (kind !== 'para' || view.getUint16(at + 8) !== 3) return NaN;
  const [g, a, b, c, d] = [12, 16, 20, 24, 28].map((offset) => fixed(view, at + offset));
  return signal >= d ? (a * signal + b) ** g : c * signal;
}
