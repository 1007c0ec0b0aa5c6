import { answeredClean } from '../answered';
import { compareExceeds, compareReaches } from '../compare';
import { COVERAGE } from '../constants';
import type { Entry } from '../course';
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

/** The newest check-ins on which the dressing came off clean, back to one on which it did not. */
function cleanSince(visits: readonly Visit[]): Entry[] {
  const clean: Entry[] = [];
  for (let at = visits.length - 1; at >= 0; at--) {
    for (const entry of [...visits[at].entries].reverse()) {
      const said = answeredClean(entry);
      if (said === false) return clean;
      if (said) clean.unshift(entry);
    }
  }
  return clean;
}

/** Two dressings in a row came off clean, and the last usable photo shows no raw area: for a person to confirm. */
function judge({ visits, limits }: View): Raised | null {
  const clean = cleanSince(visits);
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

export const DRY: Rule = { id: 'dry', kind: 'administrative', ownRiskLevel: true, highest: 'visit', judge };
