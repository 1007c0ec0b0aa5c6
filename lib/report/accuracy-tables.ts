import type { AccuracyFigures, GroupFigures } from './method-figures';
import { millimetreText, percentText, type PlainTable } from './plain-table';

/** As the truth files name them: Fitzpatrick's numerals stand for the six classes of the typology angle. */
const CLASS_WORDS: Readonly<Record<string, string>> = { I: 'very light', II: 'light', III: 'intermediate', IV: 'tan', V: 'brown', VI: 'dark' };

/**
 * The accuracy bench as tables: everything together, by skin, by light. Bars are those of the measurement definition.
 *
 * @param figures the bench's own file
 * @returns three tables of words
 * @example accuracyTables(figures)[0].rows[0][0] // 'length in the card plane, 95 % of photos'
 */
export function accuracyTables(figures: AccuracyFigures): readonly PlainTable[] {
  const caption = `Against phantoms with exact truth: ${figures.photos} photos, seed ${figures.seed ?? '–'}`;
  return [
    { caption, columns: ['What', 'Found', 'To reach'], rows: overall(figures) },
    groupTable('By class of skin', 'Skin', Object.entries(figures.byItaClass).map(([name, group]) => [CLASS_WORDS[name] ?? name, group])),
    groupTable('By light', 'Light', Object.entries(figures.byLight)),
  ];
}

function overall({ erythemaArea: area, reach, length, pose, nailFoldMargin, grooveWidth, falseErythema, faults, refusedShare }: AccuracyFigures): string[][] {
  return [
    ['length in the card plane, 95 % of photos', percentText(length.p95RelError, 2), '0.5 % up to 20°, 1 % up to 35°'],
    ['tilt of the phone, median error', pose.tiltMedianErrorDeg === null ? '–' : `${pose.tiltMedianErrorDeg.toFixed(2)}°`, '1.5°'],
    ['redness area, median error', percentText(area.medianRelError), '10 %'],
    ['redness area, 95 % of photos', percentText(area.p95RelError), '25 %'],
    ['redness area, inside the stated uncertainty (k = 2)', percentText(area.coverage), '90–98 %'],
    ['redness area, median stated uncertainty (k = 2)', percentText(area.medianRelU), 'none set'],
    ['redness there but not measured', percentText(refusedShare), '15 %, very light to tan'],
    ['reach, median error', millimetreText(reach.medianMm), '0.5 mm'],
    ['reach, 95 % of photos', millimetreText(reach.p95Mm), '1.5 mm'],
    ['reach, inside the stated uncertainty (k = 2)', percentText(reach.coverage), '90–98 %'],
    ['nail-fold margin, root mean square', millimetreText(nailFoldMargin.rmsMm), '0.5 mm'],
    ['groove width, median error', millimetreText(grooveWidth.medianMm), '0.3 mm'],
    [`redness reported where there is none (${falseErythema.photos} photos), 95 %`, falseErythema.p95Mm2 === null ? '–' : `${falseErythema.p95Mm2.toFixed(1)} mm²`, '3 mm²'],
    [`photos with a fault that its gate caught (${faults.photos})`, percentText(faults.caughtShare), '95 %'],
    ['photos without a fault that were refused', percentText(faults.cleanRefusedShare), '2 %'],
  ];
}

function groupTable(caption: string, first: string, groups: readonly (readonly [string, GroupFigures])[]): PlainTable {
  return {
    caption,
    columns: [first, 'Photos', 'Redness not measured', 'Area, median', 'Area, 95 %', 'Reach, median', 'Reach, 95 %'],
    rows: groups.map(([name, { photos, refusedShare, erythemaArea: area, reach }]) => [
      name, String(photos), percentText(refusedShare, 0), percentText(area.medianRelError), percentText(area.p95RelError), millimetreText(reach.medianMm), millimetreText(reach.p95Mm),
    ]),
  };
}
