import type { Raised } from '../finding';
import { likeReach } from '../like-reach';
import { spreadOfArea, spreadOfLength } from '../spread';
import type { Rule, View } from '../view';
import { visitValue } from '../visit-value';
import type { Visit } from '../visits';

const area = (visit: Visit) => visitValue(visit, 'erythemaArea');

/** Redness spreads, by reach or by area; like is compared with like (`likeReach`). */
function judge(view: View): Raised | null {
  const reach = likeReach(view.visits);
  return spreadOfLength(view, reach, 'reach') ?? spreadOfArea(view, area, reach);
}

export const SPREADING: Rule = { id: 'spreading', kind: 'measurement', ownRiskLevel: false, highest: 'today', judge };
