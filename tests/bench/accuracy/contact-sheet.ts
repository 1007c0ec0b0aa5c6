import sharp from 'sharp';
import { drawOverlay } from '../../../lib/commands/draw-overlay';
import type { Analysis } from '../../../lib/pipeline/analysis';
import type { BenchPhoto } from './bench-photos';

const TILE_PX = { width: 264, height: 380 };
const COLUMNS = 8;

/** Overlays side by side, in the order of skin class and light, for looking at many at once. */
export class ContactSheet {
  readonly #tiles: { order: string; picture: Buffer }[] = [];

  async add({ name, truth }: BenchPhoto, analysis: Analysis): Promise<void> {
    const overlay = await drawOverlay(analysis);
    const source = overlay ? sharp(overlay) : sharp(analysis.photo.srgb, { raw: { width: analysis.photo.widthPx, height: analysis.photo.heightPx, channels: 3 } });
    const picture = await source.resize({ ...TILE_PX, fit: 'contain', background: '#fcfbf7' }).removeAlpha().png().toBuffer();
    this.#tiles.push({ order: `${truth.skinClass.padEnd(4)} ${truth.light} ${name}`, picture });
  }

  async write(file: string): Promise<void> {
    const tiles = [...this.#tiles].sort((a, b) => a.order.localeCompare(b.order));
    const rows = Math.ceil(tiles.length / COLUMNS);
    await sharp({ create: { width: COLUMNS * TILE_PX.width, height: rows * TILE_PX.height, channels: 3, background: '#fcfbf7' } })
      .composite(tiles.map(({ picture }, i) => ({ input: picture, left: (i % COLUMNS) * TILE_PX.width, top: Math.floor(i / COLUMNS) * TILE_PX.height })))
      .png()
      .toFile(file);
  }
}
