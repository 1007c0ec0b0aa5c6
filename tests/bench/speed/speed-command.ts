import { execFileSync, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { buildProgram } from '../../../lib/commands/build-program';
import { WORKER_ENVIRONMENT } from '../../../lib/commands/worker-environment';
import { twelveMegapixelPhoto } from './twelve-megapixel-photo';

const PROBE = path.join(import.meta.dirname, 'speed-probe.ts');
const NATIVE = path.join(import.meta.dirname, 'native-chain.py');
const NATIVE_PYTHON = '/usr/bin/python3';

export interface SpeedProbe {
  readonly decodeMs: number;
  readonly analysisMs: number;
  readonly sameStepsMs: number;
}

/**
 * Whole analysis of one 12-megapixel photo against the bare decode of the same file, in one run; peak memory of a
 * process that does nothing else; photos per second on all cores; and the same steps in native OpenCV from Python.
 * What is measured is built, and run, exactly as the worker is.
 * `npm run bench -- speed [--json FILE]`
 */
export async function speedCommand(words: readonly string[]): Promise<void> {
  const { values } = parseArgs({ args: [...words], options: { json: { type: 'string' } } });
  const folder = await mkdtemp(path.join(os.tmpdir(), 'foldwatch-speed-'));
  try {
    const photo = path.join(folder, 'photo.jpg');
    await writeFile(photo, await twelveMegapixelPhoto());
    const built = await buildProgram(PROBE);
    const probe = JSON.parse(await runProbe(built, [photo, 'timed'])) as SpeedProbe;
    const nativeMs = nativeChainMs(photo);
    // A process of its own: whole pictures that the bench decodes for comparison are none of a worker's.
    const { peakMb } = JSON.parse(await runProbe(built, [photo, 'many', String(FOR_PEAK)])) as { peakMb: number };
    const photosPerSecond = await throughput(built, photo);
    const figures = {
      ratioToDecode: probe.analysisMs / probe.decodeMs,
      ratioToNative: nativeMs && probe.sameStepsMs / nativeMs,
      peakMb,
      photosPerSecond,
      decodeMs: probe.decodeMs,
      analysisMs: probe.analysisMs,
      sameStepsMs: probe.sameStepsMs,
      nativeMs,
    };
    print(figures);
    if (values.json) await writeFile(values.json, `${JSON.stringify(figures, null, 1)}\n`);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

function print(figures: Record<string, number | null>): void {
  const { ratioToDecode, ratioToNative, peakMb, photosPerSecond, decodeMs, analysisMs, sameStepsMs, nativeMs } = figures;
  console.log(`12-megapixel JPEG, ${os.cpus().length} cores, medians of repeated warm runs in one process`);
  console.log(`  bare decode (sharp)                 ${decodeMs?.toFixed(0)} ms`);
  console.log(`  whole analysis                      ${analysisMs?.toFixed(0)} ms = ${ratioToDecode?.toFixed(2)} × bare decode`);
  if (nativeMs === null) console.log('  native OpenCV (python3-opencv)      not on this machine');
  else console.log(`  decode, find, rectify, threshold    ${sameStepsMs?.toFixed(0)} ms, native OpenCV ${nativeMs.toFixed(0)} ms: ratio ${ratioToNative?.toFixed(2)}`);
  console.log(`  peak memory of the process          ${peakMb?.toFixed(0)} MB`);
  console.log(`  photos per second, all cores        ${photosPerSecond?.toFixed(2)}`);
}

function nativeChainMs(photo: string): number | null {
  if (!existsSync(NATIVE_PYTHON)) return null;
  try {
    return Number(execFileSync(NATIVE_PYTHON, [NATIVE, photo], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }));
  } catch {
    return null;
  }
}

const EACH = 6;
/** Photos one after the other until a worker's memory no longer grows. */
const FOR_PEAK = 40;

async function throughput(built: string, photo: string): Promise<number> {
  const cores = os.cpus().length;
  const spans = await Promise.all(Array.from({ length: cores }, () => runProbe(built, [photo, 'many', String(EACH)])));
  const seconds = Math.max(...spans.map((text) => (JSON.parse(text) as { seconds: number }).seconds));
  return (cores * EACH) / seconds;
}

function runProbe(built: string, args: readonly string[]): Promise<string> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [built, ...args], { env: { ...process.env, ...WORKER_ENVIRONMENT }, stdio: ['ignore', 'pipe', 'inherit'] });
    let text = '';
    child.stdout.on('data', (chunk: Buffer) => (text += chunk.toString()));
    child.on('close', (code) => (code === 0 ? resolve(text) : reject(new Error(`the speed probe ended with ${code}`))));
  });
}
