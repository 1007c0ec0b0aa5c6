import type { CardGeometry, Patch } from './card-geometry';
import { geometryFile, type GeometryFile, type PatchInFile } from './geometry-file';

export type GeometryReading = { readonly geometry: CardGeometry } | { readonly problem: string };

/** Cards made by others that do not say. */
const DEFAULT_DICTIONARY = 'DICT_4X4_50';
const UNNAMED_VERSION = 'unnamed';
const WHITE_CODE = 255;
/** A notch drawn to a rounded edge still counts as reaching it. */
const EDGE_TOLERANCE_MM = 0.1;

function kindOf([red, green, blue]: readonly [number, number, number]): Patch['kind'] {
  if (red !== green || green !== blue) return 'colour';
  return red === WHITE_CODE ? 'white' : 'grey';
}

/** How many markers a dictionary has, where its name says so; the detector knows the others. */
function markersIn(dictionary: string): number {
  const count = /^DICT_\dX\d_(\d+)$/.exec(dictionary);
  return count === null ? Infinity : Number(count[1]);
}

function readPatch(patch: PatchInFile, place: number): Patch | { readonly problem: string } {
  const field = `patches[${place}]`;
  const designSrgb = patch.srgb ?? (patch.kind === 'white' ? ([WHITE_CODE, WHITE_CODE, WHITE_CODE] as const) : undefined);
  if (designSrgb === undefined) return { problem: `${field}.srgb is needed: a patch that is not white must say its colour.` };
  const widthMm = patch.wMm ?? patch.sizeMm;
  const heightMm = patch.hMm ?? patch.sizeMm;
  if (widthMm === undefined || heightMm === undefined) {
    return { problem: `${field}.sizeMm is needed, or wMm and hMm: a patch must say how large it is.` };
  }
  return {
    name: patch.name ?? `patch${place + 1}`,
    kind: patch.kind ?? kindOf(designSrgb),
    centre: { acrossMm: patch.xMm, downMm: patch.yMm },
    widthMm,
    heightMm,
    designSrgb,
  };
}

/** What each field alone cannot show: everything on the card, no id twice, a notch that opens below. */
function contradictionIn(file: GeometryFile): string | null {
  const off = (field: string, x: number, y: number, width: number, height: number): string | null => {
    const on = x >= width / 2 && y >= height / 2 && x <= file.widthMm - width / 2 && y <= file.heightMm - height / 2;
    return on ? null : `${field} does not lie on the card of ${file.widthMm} by ${file.heightMm} mm.`;
  };
  const ids = file.fiducials.map((fiducial) => fiducial.id);
  const twice = ids.findIndex((id, place) => ids.indexOf(id) !== place);
  if (twice >= 0) return `fiducials[${twice}].id is ${ids[twice]} again: each id may stand on the card once.`;
  const beyond = ids.findIndex((id) => id >= markersIn(file.dictionary ?? DEFAULT_DICTIONARY));
  if (beyond >= 0) return `fiducials[${beyond}].id is ${ids[beyond]}, which ${file.dictionary ?? DEFAULT_DICTIONARY} does not have.`;
  const ends = [0, file.notch.length - 1];
  const floating = ends.find((place) => Math.abs(file.notch[place][1] - file.heightMm) > EDGE_TOLERANCE_MM);
  if (floating !== undefined) return `notch[${floating}] must lie on the card's lower edge, at ${file.heightMm} mm.`;
  const places = [
    ...file.notch.map(([x, y], place) => off(`notch[${place}]`, x, y, 0, 0)),
    ...file.fiducials.map((f, place) => off(`fiducials[${place}]`, f.xMm, f.yMm, f.sizeMm, f.sizeMm)),
    ...(file.patches ?? []).map((p, place) => off(`patches[${place}]`, p.xMm, p.yMm, p.wMm ?? p.sizeMm ?? 0, p.hMm ?? p.sizeMm ?? 0)),
    file.qr ? off('qr', file.qr.xMm, file.qr.yMm, file.qr.sizeMm, file.qr.sizeMm) : null,
  ];
  return places.find((problem) => problem !== null) ?? null;
}

function geometryOf(file: GeometryFile, patches: readonly Patch[]): CardGeometry {
  const centre = (place: { xMm: number; yMm: number }) => ({ acrossMm: place.xMm, downMm: place.yMm });
  return {
    version: file.version ?? UNNAMED_VERSION,
    widthMm: file.widthMm,
    heightMm: file.heightMm,
    notch: file.notch.map(([acrossMm, downMm]) => ({ acrossMm, downMm })),
    dictionary: file.dictionary ?? DEFAULT_DICTIONARY,
    fiducials: file.fiducials.map((fiducial) => ({ id: fiducial.id, centre: centre(fiducial), sizeMm: fiducial.sizeMm })),
    patches,
    qr: file.qr ? { centre: centre(file.qr), sizeMm: file.qr.sizeMm } : null,
  };
}

/** `fiducials[2].id` from the path the schema reports. */
const fieldName = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((name, part) => (typeof part === 'number' ? `${name}[${part}]` : name ? `${name}.${String(part)}` : String(part)), '');

/**
 * Reads a card geometry file: our own, or that of a card made by others (no version, no names or kinds of patches, no
 * dictionary: DICT_4X4_50 is then meant, and grey or white is told from the colour).
 *
 * @param text of a JSON file, millimetres from the card's top left corner
 * @returns the geometry, or one sentence naming the field that is wrong.
 * @example 'problem' in parseGeometry('{}') // true
 */
export function parseGeometry(text: string): GeometryReading {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return { problem: 'The card geometry is not JSON: a file such as the card command writes is needed.' };
  }
  const read = geometryFile.safeParse(json);
  if (!read.success) {
    const { path, message } = read.error.issues[0];
    return { problem: `The card geometry is wrong at ${fieldName(path) || 'its top level'}: ${message}.` };
  }
  const contradiction = contradictionIn(read.data);
  if (contradiction !== null) return { problem: `The card geometry is wrong: ${contradiction}` };
  const patches: Patch[] = [];
  for (const [place, raw] of (read.data.patches ?? []).entries()) {
    const patch = readPatch(raw, place);
    if ('problem' in patch) return { problem: `The card geometry is wrong: ${patch.problem}` };
    patches.push(patch);
  }
  return { geometry: geometryOf(read.data, patches) };
}
