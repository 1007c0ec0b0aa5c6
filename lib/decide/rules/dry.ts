import { answeredClean } from '../answered';
import { compareExceeds, compareReaches } from '../compare';
import { COVERAGE } from '../constants';
import type { Raised } from '../finding';
import type { Rule, View } from '../view';
import { visitValue } from '../visit-value';
import type { Visit } from '../visits';
import { seenWords } from '../words';

/** No raw area: none that stands above its uncertainty, or none found at all. A fold that is hidden says nothing. */
function isClosed(visit: Visit): boolean {
  const raw = visitValue(visit, 'rawArea');
  if (raw) return !compareExceeds(raw.value - COVERAGE * raw.u, 0);
  return visit.usablePhotos.some(({ measurements: { rawArea } }) => rawArea !== undefined && 'notMeasured' in rawArea && rawArea.notMeasured === 'noRegionFound');
}

/** Two dressings in a row came off clean, and the last usable photo shows no raw area: for a person to confirm. */
function judge({ visits, limits }: View): Raised | null {
  const said = visits.flatMap(({ entries }) => entries.flatMap((entry) => (answeredClean(entry) === null ? [] : [{ ...entry, clean: answeredClean(entry) }])));
  const wet = said.findLastIndex(({ clean }) => clean === false);
  const clean = said.slice(wet + 1);
  const [first, newest] = [clean[0], clean[clean.length - 1]];
  if (clean.length < 2 || !compareReaches(newest.hours - first.hours, limits['dry.hours'])) return null;
  const seen = visits.findLast(({ usablePhotos }) => usablePhotos.length > 0);
  if (!seen || !isClosed(seen)) return null;
  const raw = visitValue(seen, 'rawArea');
  return {
    level: 'visit',
    knownHours: Math.max(newest.hours, seen.knownHours),
    numbers: raw ? [seenWords('rawArea', raw, 'mm2')] : [],
    photos: seen.usablePhotos.map(({ name }) => name),
    checkIns: clean.map(({ at }) => at),
    sentence: `Looks dry, confirm: ${clean.length} check-ins without discharge over ${Math.round(newest.hours - first.hours)} h, and no raw area in the last photo that can be used.`,
  };
}

export const DRY: Rule = { id: 'dry', kind: 'administrative', ownRiskLevel: true, judge };
