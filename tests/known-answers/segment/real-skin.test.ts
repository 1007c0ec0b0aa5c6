/**
 * Real skin and nails with published masks (FUSeg, MICCAI 2021, CC BY-NC; nails_segmentation, CC0; see SOURCES.md beside
 * them). Neither has a card: place and scale are assumed, as `tests/bench/outside` says. That bench has the whole table.
 */
import { describe, expect, it } from 'vitest';
import { tissueModel } from '../../../lib/edges/infer/tissue-model';
import { RESOLUTION_LIMIT_PX_PER_MM } from '../../../lib/rectify/constants';
import { diceOfNail, listedNails, PLATE_MM2, surestNail } from '../../bench/outside/nail-photos';
import { readMaskedPhoto } from '../../bench/outside/read-masked-photo';
import { photosWithoutCard } from '../../bench/outside/skin-photos';
import { hasSharedData } from '../../shared-data';

const here = hasSharedData('skin');

describe.skipIf(!here)('finger nails on amateur phone photos', () => {
  it('have their plate outlined with a Dice of 0.80 and more wherever the photo is as fine as the gate asks', async () => {
    const model = await tissueModel();
    const found: number[] = [];
    for (const listing of listedNails()) {
      const { photo, pieces } = await readMaskedPhoto(listing);
      for (const piece of pieces.filter(({ areaPx }) => Math.sqrt(areaPx / PLATE_MM2) >= RESOLUTION_LIMIT_PX_PER_MM)) {
        found.push(diceOfNail(await surestNail(model, photo, piece), piece, photo.widthPx) ?? 0);
      }
    }
    console.info(`nail plates at 6 px/mm and finer: Dice ${found.map((dice) => dice.toFixed(2)).join(', ')}`);
    expect(found.length).toBeGreaterThanOrEqual(4);
    expect(Math.min(...found)).toBeGreaterThanOrEqual(0.8);
  });
});

describe.skipIf(!here)('skin, wounds and nails as they were sent, light and dark', () => {
  it('are all refused, each with its reason: nothing is measured without a card', async () => {
    const { rows } = await photosWithoutCard();
    expect(rows).toHaveLength(25);
    for (const { name, verdict, note } of rows) {
      expect(verdict, name).toBe('refused');
      expect(note, name).not.toBe('');
    }
  });
});
