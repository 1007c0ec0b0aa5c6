/**
 * OpenCV's WebAssembly build, loaded once per process and never handed out bare: the module object may carry a `then`
 * of its own, so a promise that resolves to it would never settle.
 */
import { createRequire } from 'node:module';

// The bindings' own typings miss the classes used here, so the surface we rely on is written down by hand.
/* eslint-disable @typescript-eslint/no-explicit-any */
export interface OpenCv {
  readonly [name: string]: any;
}
/* eslint-enable @typescript-eslint/no-explicit-any */

const NEEDED = [
  'Mat',
  'MatVector',
  'matFromArray',
  'getPredefinedDictionary',
  'aruco_ArucoDetector',
  'aruco_DetectorParameters',
  'aruco_RefineParameters',
  'aruco_Dictionary',
  'segmentation_IntelligentScissorsMB',
  'findTransformECC',
] as const;

const READY_WITHIN_MS = 20_000;

let holder: Promise<{ cv: OpenCv }> | null = null;

/** Resolves to a plain holder object, so that nothing can mistake the module for a promise. */
export function openCv(): Promise<{ cv: OpenCv }> {
  holder ??= load();
  return holder;
}

async function load(): Promise<{ cv: OpenCv }> {
  const exported = requireQuietly('opencv-wasm');
  const module = (exported instanceof Promise ? await exported.then((cv: OpenCv) => ({ cv })) : { cv: exported }) as {
    cv: OpenCv & { then?: unknown; onRuntimeInitialized?: () => void };
  };
  delete module.cv.then;
  if (!module.cv.Mat) await runtimeReady(module);
  const missing = NEEDED.filter((name) => !(name in module.cv));
  if (missing.length > 0) throw new Error(`This OpenCV build lacks ${missing.join(', ')}: install the pinned package.`);
  return module;
}

const PROCESS_EVENTS = ['uncaughtException', 'unhandledRejection'] as const;

/** Loads the module and takes its process-wide handlers off again: they turn every later error into an abort. */
function requireQuietly(name: string): unknown {
  const before = PROCESS_EVENTS.map((event) => new Set(process.listeners(event as 'uncaughtException')));
  const exported: unknown = createRequire(import.meta.url)(name);
  PROCESS_EVENTS.forEach((event, i) => {
    for (const listener of process.listeners(event as 'uncaughtException')) {
      if (!before[i].has(listener)) process.removeListener(event, listener);
    }
  });
  return exported;
}

function runtimeReady(module: { cv: { onRuntimeInitialized?: () => void } }): Promise<void> {
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => reject(new Error('OpenCV did not start in time')), READY_WITHIN_MS);
    module.cv.onRuntimeInitialized = () => {
      clearTimeout(late);
      resolve();
    };
  });
}

interface Deletable {
  delete(): void;
}

/**
 * Runs `work` with a collector that owns every OpenCV object made inside: all are freed at the end, also when it
 * throws. A C++ exception arrives as a bare heap pointer and leaves as an Error that names the step.
 */
export function withOpenCv<Result>(cv: OpenCv, step: string, work: (own: <T extends Deletable>(made: T) => T) => Result): Result {
  const owned: Deletable[] = [];
  const own = <T extends Deletable>(made: T): T => {
    owned.push(made);
    return made;
  };
  try {
    return work(own);
  } catch (cause) {
    if (typeof cause !== 'number') throw cause;
    const told: unknown = typeof cv.exceptionFromPtr === 'function' ? cv.exceptionFromPtr(cause)?.msg : undefined;
    throw new Error(`OpenCV failed in ${step}: ${String(told ?? cause)}`);
  } finally {
    for (const one of owned.reverse()) one.delete();
  }
}
