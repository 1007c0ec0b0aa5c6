import { spreadOfLength } from '../spread';
import type { Rule } from '../view';
import { visitValue } from '../visit-value';

/** The same as spreading, for how far redness goes toward the ankle. */
export const SPREADING_PROXIMAL: Rule = {
  id: 'spreading-proximal',
  kind: 'measurement',
  ownRiskLevel: false,
  highest: 'today',
  judge: (view) => spreadOfLength(view, (visit) => visitValue(visit, 'proximalReach'), 'reach toward the ankle'),
};
