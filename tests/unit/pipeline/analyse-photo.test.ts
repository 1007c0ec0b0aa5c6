import { describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { decodeRefusal } from '../../../lib/photo/decode-refusals';
import type { UprightPhoto } from '../../../lib/photo/upright-photo';
import { analysePhoto, type AnalysisRequest } from '../../../lib/pipeline/analyse-photo';
import { METHOD_VERSION } from '../../../lib/pipeline/method-version';
import type { AnalysisPorts, Decoded } from '../../../lib/pipeline/ports';
import { seededRandom } from '../../seeded-random';
import { drawnAnalysis } from '../report/drawn-analysis';

const { capture } = drawnAnalysis(10).photo;
const chance = seededRandom(5);
const grainy: UprightPhoto = { widthPx: 320, heightPx: 240, srgb: new Uint8Array(320 * 240 * 3).map(() => 120 + 10 * chance()), sha256: 'aa', capture };
const drawn: UprightPhoto = { ...grainy, srgb: new Uint8Array(grainy.srgb.length).fill(200) };

const request: AnalysisRequest = {
  geometry: OWN_CARD,
  print: { scale: 1, relativeU: 0.005, confirmed: true },
  context: { receivedAt: '2026-03-03T08:00:00Z', knownSha256: new Set() },
};

/** An outside world that decodes to one thing, sees no card, and writes down what it was asked for. */
function world(decoded: Decoded): { ports: AnalysisPorts; asked: string[] } {
  const asked: string[] = [];
  return {
    asked,
    ports: {
      decodePhoto: () => Promise.resolve(decoded),
      detectFiducials: () => (asked.push('fiducials'), []),
      readQr: () => (asked.push('qr'), null),
      inferTissue: () => (asked.push('tissue'), Promise.reject(new Error('no card, no tissue'))),
    },
  };
}

const analysed = async (photo: UprightPhoto, context = request.context) => {
  const { ports, asked } = world({ decoded: true, photo });
  const result = await analysePhoto(new Uint8Array(), { ...request, context }, ports);
  if (!result.analysed) throw new Error('the photo was refused');
  return { analysis: result.analysis, asked };
};

describe('the journey of a photo', () => {
  it('does not begin for a file that is no photo: the refusal is handed on as it is', async () => {
    const refusal = decodeRefusal('truncated');
    const { ports, asked } = world({ decoded: false, refusal });
    expect(await analysePhoto(new Uint8Array(), request, ports)).toEqual({ analysed: false, refusal });
    expect(asked).toEqual([]);
  });

  it('ends before a card is looked for when the picture was not taken with a camera', async () => {
    const { analysis, asked } = await analysed(drawn);
    expect(analysis.reasons.map(({ gate }) => gate)).toEqual(['notAPhotograph']);
    expect(asked).toEqual([]);
  });

  it('ends without a card, and never asks for tissues then', async () => {
    const { analysis, asked } = await analysed(grainy);
    expect(analysis.reasons.map(({ gate }) => gate)).toEqual(['cardNotFound']);
    expect(new Set(asked)).toEqual(new Set(['fiducials']));
  });

  it('keeps every reason: a photo sent twice that shows no card is told both', async () => {
    const { analysis } = await analysed(grainy, { ...request.context, knownSha256: new Set(['aa']) });
    expect(analysis.reasons.map(({ gate }) => gate)).toEqual(['duplicate', 'cardNotFound']);
  });

  it('keeps the photo and the method version, whatever was found', async () => {
    for (const photo of [drawn, grainy]) {
      const { analysis } = await analysed(photo);
      expect(analysis).toMatchObject({ methodVersion: METHOD_VERSION, card: null, segmentation: null, measurement: null });
      expect(analysis.photo).toBe(photo);
    }
  });
});
