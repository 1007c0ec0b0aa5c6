/** The rule book's own rule: what a clinic may set each limit to, and which limits keep their order. */
import { z } from 'zod';
import { LIMITS, type LimitId } from './constants';
import { DEFAULT_RULE_BOOK, LIMIT_IDS } from './rule-book';

/** The first may not come above the second. */
const IN_ORDER: readonly (readonly [lower: LimitId, higher: LimitId])[] = [
  ['reachMild.mm', 'reachModerate.mm'],
  ['purulent.reachMm', 'reachModerate.mm'],
  ['early.hours', 'early.chemicalHours'],
  ['spreading.beforeMm', 'spreading.mm'],
  ['spreading.areaBeforePercent', 'spreading.areaPercent'],
  ['spreading.mm', 'spreading.earlyBaseMm'],
  ['spreading.areaMm2', 'spreading.fewAreaMm2'],
  ['spreading.earlyBaseFromHours', 'spreading.baseFromHours'],
  ['spreading.baseOlderHours', 'spreading.baseFromHours'],
  ['fever.lowCelsius', 'fever.celsius'],
  ['pain.riseTwice', 'pain.riseOnce'],
  ['antibiotic.afterHours', 'antibiotic.hours'],
  ...(['none', 'naoh', 'phenol30', 'phenol60', 'unknown'] as const).flatMap((kind): [LimitId, LimitId][] => [
    [`expected.${kind}`, `slow.${kind}`],
    [`slow.${kind}`, `late.${kind}`],
  ]),
];

const numberOf = (id: LimitId) => {
  const { least, most, unit } = LIMITS[id];
  const error = ({ input }: { input?: unknown }) => `${id} may lie between ${least} and ${most} ${unit}, received ${JSON.stringify(input)}.`;
  return z.number({ error }).min(least, { error }).max(most, { error }).optional();
};

/** A clinic's own limits, by id: each within its range, and all of them, with the defaults between, in their order. */
export const limitsSchema = z
  .strictObject(Object.fromEntries(LIMIT_IDS.map((id) => [id, numberOf(id)])) as Record<LimitId, ReturnType<typeof numberOf>>)
  .superRefine((own, context) => {
    const all = { ...DEFAULT_RULE_BOOK.limits, ...own };
    for (const [lower, higher] of IN_ORDER) {
      if (all[lower] > all[higher]) context.addIssue({ code: 'custom', message: `${lower} (${all[lower]}) may not come above ${higher} (${all[higher]}).` });
    }
  });
export type OwnLimits = Partial<Record<LimitId, number>>;
