/**
 * Decodes one HEIC and ends. A thread of its own: it can be stopped by the clock, and its WebAssembly memory, which
 * never shrinks, goes with it. Plain JavaScript, because a thread starts without the TypeScript loader.
 */
import { parentPort, workerData } from 'node:worker_threads';
import heicDecode from 'heic-decode';

const { bytes, maxPixels } = workerData;

const images = await heicDecode.all({ buffer: bytes });
try {
  // A file may list further pictures of its own (bursts); the header has said which one is the photo by its size.
  const image = images.find(({ width, height }) => isWanted(width, height));
  if (!image) throw new Error('no picture of the stated size');
  if (image.width * image.height > maxPixels) throw new Error('more pixels than the header says');
  const { width, height, data } = await image.decode();
  const srgb = withoutAlpha(data, width * height);
  parentPort.postMessage({ widthPx: width, heightPx: height, srgb }, [srgb.buffer]);
} finally {
  images.dispose();
}

function isWanted(width, height) {
  const { widthPx, heightPx } = workerData;
  return (width === widthPx && height === heightPx) || (width === heightPx && height === widthPx) || images.length === 1;
}

function withoutAlpha(rgba, pixels) {
  const rgb = new Uint8Array(pixels * 3);
  for (let i = 0; i < pixels; i += 1) {
    rgb[i * 3] = rgba[i * 4];
    rgb[i * 3 + 1] = rgba[i * 4 + 1];
    rgb[i * 3 + 2] = rgba[i * 4 + 2];
  }
  return rgb;
}
