import { answeredAt } from '../answered';
import type { Raised } from '../finding';
import { painRise } from '../pain-rise';
import type { Rule, View } from '../view';

/** Pain rises after day 3, when it should fall. */
function judge({ visits, limits }: View): Raised | null {
  const rise = painRise(visits, limits);
  if (!rise) return null;
  const times = rise.visits.length > 1 ? 'on two reports in a row' : 'once';
  return {
    level: 'soon',
    knownHours: visits[visits.length - 1].knownHours,
    numbers: [
      { name: 'pain', value: rise.pain, unit: '/10' },
      { name: 'secondLowest', value: rise.base, unit: '/10' },
    ],
    photos: [],
    checkIns: answeredAt(rise.visits),
    sentence: `Pain is ${rise.pain} of 10, ${rise.pain - rise.base} above the second-lowest report (${rise.base}), ${times}.`,
  };
}

export const PAIN_RISING: Rule = { id: 'pain-rising', kind: 'symptom', ownRiskLevel: false, highest: 'soon', judge };
