/** What the bench needs to know of a phantom, whichever renderer made it. */
export const CLASSES = ['I', 'II', 'III', 'IV', 'V', 'VI'] as const;
export type ClassName = (typeof CLASSES)[number];

export interface CommonTruth {
  readonly name: string;
  readonly skinClass: ClassName;
  readonly light: string;
  readonly tiltDeg: number;
  readonly distanceMm: number;
  /** The gate that has to refuse this photo; null where it must be measured. */
  readonly expectedGate: string | null;
  /** What the printed 50 mm bar really measures on this card. */
  readonly barReadsMm: number;
  readonly measurements: TruthNumbers | null;
  readonly nailFoldMargin: readonly (readonly [number, number])[];
  readonly checkPoints: { readonly imagePx: readonly Pair[]; readonly cardMm: readonly Pair[] } | null;
  readonly itaDeg: number | null;
  /** 10–90 % width of a sharp edge by the camera's own figures; null where the renderer does not say. */
  readonly edgeSpreadMm: number | null;
}

export type Pair = readonly [number, number];

export interface TruthNumbers {
  readonly erythemaArea: number;
  readonly reach: number | null;
  readonly reachP95: number | null;
  readonly grooveWidth: number;
  readonly rawArea: number;
  /** On the skin; left out by renderers that do not say. */
  readonly unrolledArea?: number;
  readonly unrolledReach?: number | null;
}

const OWN_CLASSES: Readonly<Record<string, ClassName>> = {
  'very light': 'I',
  light: 'II',
  intermediate: 'III',
  tan: 'IV',
  brown: 'V',
  dark: 'VI',
};

/** Reads the truth file of either renderer. */
// eslint-disable-next-line @typescript-eslint/no-explicit-any -- a file from outside; only the fields named here are used
export function readTruth(name: string, truth: any): CommonTruth {
  return {
    name,
    skinClass: OWN_CLASSES[truth.skinClass] ?? truth.skinType,
    // Two lamps are named key+ambient; the key light decides.
    light: String(truth.light ?? truth.lightName).split('+')[0],
    tiltDeg: truth.camera.tiltDeg,
    distanceMm: truth.camera.distanceMm,
    expectedGate: truth.expectedGate ?? null,
    barReadsMm: truth.card.barReadsMm ?? 50,
    measurements: truth.measurements,
    nailFoldMargin: truth.outlines?.nailFoldMargin ?? [],
    checkPoints: truth.card.checkPoints ?? null,
    edgeSpreadMm: truth.camera.edgeSpreadMm ?? null,
    itaDeg: truth.itaDeg ?? truth.colour?.itaReferenceDeg ?? null,
  };
}
