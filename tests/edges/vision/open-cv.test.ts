import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { rasterDrawing } from '../../../lib/card/raster-drawing';
import { detectFiducials } from '../../../lib/edges/vision/detect-fiducials';
import { type OpenCv, openCv, withOpenCv } from '../../../lib/edges/vision/open-cv';
import { shrinkToGrey } from '../../../lib/rectify/grey-image';
import { sampleDrawing } from '../../unit/card/sample-drawing';
import { photoOf } from '../../unit/rectify/photo-of';

let cv: OpenCv;
beforeAll(async () => {
  ({ cv } = await openCv());
});

const raster = rasterDrawing(sampleDrawing(), OWN_CARD, 7);
/** The card printed in one ink: each channel shows the card or plain paper. */
function inChannels(red: boolean, green: boolean, blue: boolean) {
  const srgb = raster.srgb.map((code, i) => ([red, green, blue][i % 3] ? code : 255));
  return shrinkToGrey(photoOf(raster.widthPx, raster.heightPx, srgb), 1);
}
const card = () => inChannels(true, true, true);

describe('the OpenCV module', () => {
  it('is loaded once and handed out in a holder that is no promise', async () => {
    const [first, second] = [await openCv(), await openCv()];
    expect(first).toBe(second);
    expect('then' in first.cv).toBe(false);
  });

  it('leaves no process-wide handlers behind and lets the process end by itself', () => {
    const file = path.resolve(import.meta.dirname, '../../../lib/edges/vision/open-cv.ts');
    const script = `import(${JSON.stringify(file)}).then(({ openCv }) => openCv()).then(({ cv }) => console.log([typeof cv.Mat, ...['uncaughtException', 'unhandledRejection'].map((e) => process.listeners(e).length)].join()))`;
    const { stdout, status } = spawnSync(process.execPath, ['--import', 'tsx', '-e', script], { encoding: 'utf8', timeout: 50_000 });
    expect([stdout.trim(), status]).toEqual(['function,0,0', 0]);
  });
});

describe('an error inside OpenCV', () => {
  it('comes out as an Error that names the step and tells what OpenCV asserted', () => {
    const empty = { widthPx: 0, heightPx: 0, grey: new Uint8Array(), shrink: 1 };
    expect(() => detectFiducials(cv, empty, 'DICT_4X4_50')).toThrow(/^OpenCV failed in detectFiducials: .*empty/);
  });

  it('of our own making passes through unchanged', () => {
    const own = new RangeError('ours');
    expect(() => withOpenCv(cv, 'some step', () => { throw own; })).toThrow(own);
  });

  it('is told before OpenCV is asked when the dictionary does not exist', () => {
    expect(() => detectFiducials(cv, card(), 'DICT_9X9_7')).toThrow('unknown dictionary DICT_9X9_7');
  });
});

describe('OpenCV’s memory', () => {
  it('does not grow over 200 searches, failing ones among them', () => {
    const image = card();
    const empty = { widthPx: 0, heightPx: 0, grey: new Uint8Array(), shrink: 1 };
    detectFiducials(cv, image, OWN_CARD.dictionary);
    const before = cv.HEAP8.length;
    const place = firstFreePlace();
    for (let i = 0; i < 200; i++) {
      if (i % 10 === 9) expect(() => detectFiducials(cv, empty, OWN_CARD.dictionary)).toThrow();
      else expect(detectFiducials(cv, image, OWN_CARD.dictionary)).toHaveLength(8);
    }
    expect(cv.HEAP8.length).toBe(before);
    // The same block is free again: nothing in front of it was kept.
    expect(Math.abs(firstFreePlace() - place)).toBeLessThan(1 << 16);
  });

  it('is freed when the work throws', () => {
    let mat: { isDeleted(): boolean } | undefined;
    expect(() => withOpenCv(cv, 'some step', (own) => {
      mat = own(new cv.Mat(4, 4, cv.CV_8UC1));
      throw new Error('stop');
    })).toThrow('stop');
    expect(mat?.isDeleted()).toBe(true);
  });

  /** Where the heap would put the next four megabytes. */
  function firstFreePlace(): number {
    const mat = new cv.Mat(2048, 2048, cv.CV_8UC1);
    const at: number = mat.data.byteOffset;
    mat.delete();
    return at;
  }
});

describe('the channels of a photo', () => {
  it('keep their order: the search sees green ink patterns and neither red nor blue ones', () => {
    const ids = (image: ReturnType<typeof inChannels>): number[] => detectFiducials(cv, image, OWN_CARD.dictionary).map((one) => one.id).sort((a, b) => a - b);
    expect(ids(inChannels(false, true, false))).toEqual(OWN_CARD.fiducials.map((f) => f.id));
    expect(ids(inChannels(true, false, false))).toEqual([]);
    expect(ids(inChannels(false, false, true))).toEqual([]);
  });
});

describe('a search in the card’s way and in the classic way', () => {
  it('finds the same fiducials, the first corner being the marker’s own top left', () => {
    for (const search of ['thorough', 'any'] as const) {
      const found = detectFiducials(cv, card(), OWN_CARD.dictionary, search);
      expect(found.map((one) => one.id).sort((a, b) => a - b)).toEqual([0, 1, 2, 6, 22, 36, 39, 46]);
      for (const { cornersPx: [topLeft, topRight, lowRight] } of found) {
        expect(topRight.column).toBeGreaterThan(topLeft.column + 50);
        expect(lowRight.row).toBeGreaterThan(topRight.row + 50);
      }
    }
  });
});
