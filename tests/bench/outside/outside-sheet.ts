import sharp from 'sharp';
import { encodeSrgb } from '../../../lib/colour/encode-srgb';
import { encodeOverlay } from '../../../lib/edges/decode/encode-overlay';
import { gridPixel } from '../../../lib/rectify/grid-pixel';
import type { Region, Segmentation } from '../../../lib/segment/segmentation';
import type { ToeColours } from '../../../lib/segment/toe-colours';
import type { LineMm } from '../../../lib/units';

const COLUMNS = 8;
const CAPTION_PX = 38;
const SCALE = 0.6;
const COLOUR = { toe: '#1f3a8a', plate: '#0a7d4b', margin: '#000', erythema: '#c2185b', raw: '#e07b00' } as const;

/** Millimetre maps of pictures without a card, with what was drawn on them; published masks are tinted. */
export class OutsideSheet {
  readonly #tiles: Buffer[] = [];

  async add(caption: string, colours: ToeColours, found: Segmentation, truth: Uint8Array | null): Promise<void> {
    const { widthPx, heightPx } = colours.grid;
    const rgb = new Uint8Array(widthPx * heightPx * 3);
    for (let i = 0; i < widthPx * heightPx; i++) {
      [colours.red[i], colours.green[i], colours.blue[i]].forEach((light, channel) => {
        const code = encodeSrgb(Math.min(1, light));
        rgb[3 * i + channel] = truth?.[i] === 1 && channel > 0 ? Math.min(255, code + 50) : code;
      });
    }
    const path = (line: LineMm, close: boolean): string =>
      line.map((point, i) => { const { column, row } = gridPixel(found.grid, point); return `${i ? 'L' : 'M'}${column.toFixed(1)} ${row.toFixed(1)}`; }).join('') + (close ? 'Z' : '');
    const drawn = (region: Region | null, colour: string): string =>
      region ? `<path d="${region.rings.map(({ ring }) => path(ring, true)).join('')}" fill="none" stroke="${colour}" stroke-width="2.5"/>` : '';
    const margin = found.nailFoldMargin ? `<path d="${path(found.nailFoldMargin.line, false)}" fill="none" stroke="${COLOUR.margin}" stroke-width="2.5"/>` : '';
    const text = `<text x="4" y="${heightPx + 28}" font-size="24" font-family="sans-serif">${caption}</text>`;
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${widthPx}" height="${heightPx + CAPTION_PX}">${drawn(found.toe, COLOUR.toe)}${drawn(found.nailPlate, COLOUR.plate)}${drawn(found.erythema, COLOUR.erythema)}${drawn(found.raw, COLOUR.raw)}${margin}${text}</svg>`;
    const picture = await encodeOverlay({ srgb: rgb, widthPx, heightPx, legendPx: CAPTION_PX, svg });
    this.#tiles.push(await sharp(picture).resize(Math.round(widthPx * SCALE)).removeAlpha().png().toBuffer());
  }

  async write(file: string): Promise<void> {
    const { width = 0, height = 0 } = this.#tiles[0] ? await sharp(this.#tiles[0]).metadata() : {};
    if (width === 0) return;
    const rows = Math.ceil(this.#tiles.length / COLUMNS);
    await sharp({ create: { width: COLUMNS * width, height: rows * height, channels: 3, background: '#fff' } })
      .composite(this.#tiles.map((input, i) => ({ input, left: (i % COLUMNS) * width, top: Math.floor(i / COLUMNS) * height })))
      .png()
      .toFile(file);
  }
}
