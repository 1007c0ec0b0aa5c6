/** A photo is measured from the part that a glance at it showed to be needed. To the last digit it is what the whole photo gives. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../lib/card/own-card';
import { analysisPorts } from '../../lib/edges/analysis-ports';
import type { PartPx } from '../../lib/photo/part-of';
import { analysePhoto, type AnalysisRequest } from '../../lib/pipeline/analyse-photo';
import { type Analysis } from '../../lib/pipeline/analysis';
import { analysisToJson } from '../../lib/pipeline/analysis-json';
import type { AnalysisPorts } from '../../lib/pipeline/ports';
import { ROOT } from '../architecture/source-tree';

const SAMPLES = path.join(ROOT, 'sample-images');
const FOLDERS = ['measured', 'refused', 'series'];
const photos = FOLDERS.flatMap((folder) => readdirSync(path.join(SAMPLES, folder)).map((name) => path.join(folder, name)));
const request: AnalysisRequest = {
  geometry: OWN_CARD,
  print: { scale: 1, relativeU: 0.005, confirmed: true },
  context: { receivedAt: '2026-11-01T00:00:00Z', knownSha256: new Set() },
};

let ports: AnalysisPorts;
beforeAll(async () => {
  ports = await analysisPorts();
});

/** The same outside world, but for the part that is decoded. */
const withPart = (change: (part: PartPx | null) => PartPx | null): AnalysisPorts => ({
  ...ports,
  decodePhoto: (file, glance) => ports.decodePhoto(file, glance && ((copy) => change(glance(copy)))),
});

async function analysed(photo: string, world: AnalysisPorts): Promise<Analysis> {
  const result = await analysePhoto(new Uint8Array(readFileSync(path.join(SAMPLES, photo))), request, world);
  if (!result.analysed) throw new Error(`${photo}: ${result.refusal.id}`);
  return result.analysis;
}

const jsonOf = (analysis: Analysis): string => JSON.stringify(analysisToJson(analysis, 'photo'));

describe('a sample photo', () => {
  const inPart = new Set<string>();

  it.each(photos)('is the same from a part as from the whole: %s', async (photo) => {
    const partly = await analysed(photo, ports);
    if (partly.photo.part) inPart.add(photo);
    expect(jsonOf(partly)).toBe(jsonOf(await analysed(photo, withPart(() => null))));
  });

  it('was measured from a part in many cases, and from the whole in others', () => {
    expect(inPart.size).toBeGreaterThan(photos.length / 3);
    expect(inPart.size).toBeLessThan(photos.length);
  });
});

it('is decoded whole where some step has to look beyond the part', async () => {
  const photo = path.join('measured', 'light-shade.jpg');
  const whole = jsonOf(await analysed(photo, withPart(() => null)));
  const parts: PartPx[] = [
    // Most of the card and all of its grain, but not its last column of fiducials; then a corner without any card.
    { left: 0, top: 0, widthPx: 900, heightPx: 1200 },
    { left: 0, top: 0, widthPx: 1100, heightPx: 700 },
    { left: 0, top: 0, widthPx: 60, heightPx: 60 },
  ];
  for (const part of parts) {
    const analysis = await analysed(photo, withPart(() => part));
    expect(analysis.photo.part).toBeUndefined();
    expect(jsonOf(analysis)).toBe(whole);
  }
});
