import type { FairnessFigures } from './method-figures';
import { percentText, type PlainTable } from './plain-table';

/**
 * Redness of equal contrast in every class of skin: what was found, what went to a person, what was missed.
 *
 * @param figures the bench's own file
 * @example fairnessTable(figures).columns.length // 6
 */
export function fairnessTable({ classes, contrastEi, seed }: FairnessFigures): PlainTable {
  return {
    caption: `The same toes with redness of ${contrastEi} EI in every class of skin (seed ${seed}; one photo is ${percentText(1 / Math.min(...classes.map(({ photos }) => photos)))})`,
    columns: ['Skin', 'Photos', 'Found within a factor of two', 'Refused or sent to a person', 'Area off by more than a factor of two', '“Nothing stood out”'],
    rows: classes.map(({ skinClass, photos, sensitivity, answers }) => [
      skinClass,
      String(photos),
      percentText(sensitivity, 0),
      percentText(((answers.toAPerson ?? 0) + (answers.refused ?? 0)) / photos, 0),
      percentText((answers.farOff ?? 0) / photos, 0),
      percentText((answers.nothingFound ?? 0) / photos, 0),
    ]),
  };
}
