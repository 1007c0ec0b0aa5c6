import type { Raised } from '../finding';
import { spreadOfArea, spreadOfLength } from '../spread';
import type { Rule, View } from '../view';
import { visitValue, visitValueOfReach } from '../visit-value';
import type { Visit } from '../visits';

const projectedReach = (visit: Visit) => visitValue(visit, 'reach');
const unrolledReach = (visit: Visit) => visitValue(visit, 'unrolledReach');
const area = (visit: Visit) => visitValue(visit, 'erythemaArea');

/**
 * Redness spreads, by reach or by area. Like is compared with like: where the newest visit was unrolled, with the
 * visits that were; a change from a projected to an unrolled reach would look like growth.
 */
function judge(view: View): Raised | null {
  const newest = [...view.visits].reverse().find((visit) => visitValueOfReach(visit) !== null);
  if (!newest) return null;
  const reach = unrolledReach(newest) ? unrolledReach : projectedReach;
  return spreadOfLength(view, reach, 'reach') ?? spreadOfArea(view, area, reach);
}

export const SPREADING: Rule = { id: 'spreading', kind: 'measurement', ownRiskLevel: false, highest: 'today', judge };
