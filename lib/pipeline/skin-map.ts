import { HALF } from '../segment/constants';
import { fitToeCylinder } from '../measure/toe-cylinder';
import { CARD_DOWN } from '../measure/toe-frame';
import type { Analysis } from './analysis';
import type { SkinMap } from './earlier-visit';

/**
 * The index of a measured photo's skin, for comparing a later photo with it.
 *
 * @param analysis one photo's analysis
 * @returns null where colours, tissues or reference skin were not found
 * @example skinMap({ ...analysis, colours: null }) // null
 */
export function skinMap({ colours, fields, segmentation, card }: Pick<Analysis, 'colours' | 'fields' | 'segmentation' | 'card'>): SkinMap | null {
  const reference = segmentation?.reference ?? null;
  if (!colours || !fields || !reference) return null;
  const { toe, nailUnit, raw, macerated } = fields;
  const skin = new Uint8Array(toe.length);
  for (let i = 0; i < skin.length; i++) {
    const bare = toe[i] >= HALF && nailUnit[i] < HALF && raw[i] < HALF && macerated[i] < HALF;
    skin[i] = bare && Number.isFinite(colours.erythemaIndex[i]) ? 1 : 0;
  }
  const cylinder = fitToeCylinder(segmentation?.toe?.rings ?? [], CARD_DOWN);
  const lens = card?.pose.lens ?? null;
  return { grid: colours.grid, erythemaIndex: colours.erythemaIndex, skin, plain: reference.plain, relief: cylinder && lens && { cylinder, lens } };
}
