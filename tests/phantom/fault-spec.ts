/** Photos with one thing wrong each, strong enough that nobody would measure them. */
import type { CameraSpec, FaultKind, PhantomSpec } from './phantom-spec';
import { randomSpec, type Overrides } from './random-spec';
import { randomSource, type RandomSource } from './random/random-source';

/** A steady hand, good light, no accidental second fault. */
const QUIET_CAMERA: Partial<CameraSpec> = { defocusPx: 0, motionPx: 0, opticsBlurPx: 0.7, tiltDeg: 8, exposure: 0.9, denoise: 0.3, sharpen: 0.3 };

/** A clean spec that every fault begins from, and the control that has none. */
export function cleanSpec(seed: number, overrides: Overrides = {}): PhantomSpec {
  return randomSpec(seed, {
    ...overrides,
    wound: { iodine: 0, ...overrides.wound },
    pose: { heightOffsetMm: 0.5, ...overrides.pose },
    light: { gradient: 0.1, spreadDeg: 8, elevationDeg: 62, ambientShare: 0.55, ...overrides.light },
    camera: { ...QUIET_CAMERA, ...overrides.camera },
  });
}

/** Focal length that gives the wanted scale at the nail; the rest of the camera stays. */
function atScale(camera: CameraSpec, pxPerMm: number): Partial<CameraSpec> {
  const focalPx = pxPerMm * camera.distanceMm;
  return { focal35Mm: (focalPx * Math.hypot(36, 24)) / Math.hypot(camera.widthPx, camera.heightPx) };
}

type Spoil = (clean: PhantomSpec, random: RandomSource) => Overrides;

/** Limits the faults go beyond: tilt 35°, 6 px/mm, edge spread 0.35 mm. */
const SPOIL: Readonly<Record<FaultKind, Spoil>> = {
  noCard: () => ({ card: null }),
  tooFewFiducials: () => ({}),
  wrongCard: (_, random) => ({ card: { face: `stand-in-${random.whole(8, 15)}` } }),
  mirrored: () => ({}),
  tilt: (_, random) => ({ camera: { tiltDeg: random.between(40, 46) } }),
  lowResolution: ({ camera }, random) => ({ camera: { ...atScale(camera, random.between(3.4, 5)), opticsBlurPx: 0.5 } }),
  defocus: (clean, random) => ({ camera: { ...atScale(clean.camera, 8), defocusPx: random.between(5, 8) } }),
  motion: (clean, random) => ({ camera: { ...atScale(clean.camera, 8), motionPx: random.between(14, 24), motionDeg: random.between(0, 180) } }),
  overexposed: (_, random) => ({ camera: { exposure: random.between(2.2, 3.2), toneShoulder: 0.4 } }),
  tooDark: (_, random) => ({ camera: { exposure: random.between(0.03, 0.055), fullWell: 1500 } }),
  unevenLight: (_, random) => ({
    light: {
      ambientShare: 0.18,
      shadowEdge: { throughMm: [42.8 + random.between(-4, 4), 30 + random.between(-4, 4)], azimuthDeg: random.between(0, 360), depth: 0.93, softMm: random.between(2, 8) },
    },
  }),
  glareNail: () => ({}),
  toeNotInNotch: () => ({ subject: { kind: 'nothing' } }),
  notAPhotograph: () => ({ camera: { captureTime: null, jpegQuality: 92, orientationTag: 1 } }),
  captureTime: (_, random) => ({ camera: { captureTime: random.pick(['2041-05-14T10:20:31', '2003-01-01T00:00:00', '2036-11-02T08:15:09']) } }),
  duplicate: () => ({}),
};

/** A photo that one gate has to refuse. `duplicate` is a clean photo: the fault is to hand it in a second time. */
export function faultSpec(kind: FaultKind, seed: number): PhantomSpec {
  const clean = cleanSpec(seed);
  const spoilt = SPOIL[kind](clean, randomSource(seed, `fault ${kind}`));
  return cleanSpec(seed, { ...spoilt, faults: [kind] });
}
