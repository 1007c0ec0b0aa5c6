import { OWN_CARD } from '../../lib/card/own-card';
import type { analysisPorts } from '../../lib/edges/analysis-ports';
import { analysePhoto } from '../../lib/pipeline/analyse-photo';
import { renderKept } from '../phantom/render-kept';
import type { Phantom } from '../phantom/render-phantom';
import { SKIN_CLASSES, type SkinClass } from '../phantom/skin/skin-class';
import { equalContrastSpec } from './equal-contrast';

/**
 * What the tool said of redness that is there: found within a factor of two; found and far off; sent to a person because it
 * could not be judged; refused by a gate, so that the patient takes another photo; or "no region stood out".
 */
export type Answer = 'found' | 'farOff' | 'toAPerson' | 'refused' | 'nothingFound';
export const ANSWERS: readonly Answer[] = ['found', 'farOff', 'toAPerson', 'refused', 'nothingFound'];

export interface ClassRow {
  readonly skinClass: SkinClass;
  readonly photos: number;
  readonly answers: Readonly<Record<Answer, number>>;
  /** Found, of all photos. */
  readonly sensitivity: number;
  /** Found or given to a person or asked for again: nothing slipped by. */
  readonly notMissed: number;
}

/** Worst class at most this far behind the best (project's limit). */
export const MOST_BEHIND = 0.05;
/** Redness smaller than this is not asked about. */
const LEAST_TRUE_MM2 = 5;

type Ports = Awaited<ReturnType<typeof analysisPorts>>;

/** Renders and judges `each` photos of every class. */
export async function judgeClasses(each: number, seed: number, ports: Ports, workers = 1): Promise<ClassRow[]> {
  const specs = SKIN_CLASSES.flatMap((skinClass) => Array.from({ length: each }, (_, i) => equalContrastSpec(skinClass, i, seed)));
  const answers: (Answer | null)[] = [];
  await renderKept(specs, async (index, phantom) => void (answers[index] = await answerOf(phantom, ports)), workers);
  return SKIN_CLASSES.map((skinClass, c) => rowOf(skinClass, answers.slice(c * each, (c + 1) * each).filter((one) => one !== null)));
}

async function answerOf({ jpeg, truth }: Phantom, ports: Ports): Promise<Answer | null> {
  const trueMm2 = truth.measurements?.erythemaArea ?? 0;
  if (trueMm2 < LEAST_TRUE_MM2) return null;
  const result = await analysePhoto(jpeg, { geometry: OWN_CARD, print: { scale: 1, relativeU: 0.005, confirmed: true }, context: { receivedAt: null, knownSha256: new Set() } }, ports);
  if (!result.analysed || !result.analysis.measurement) return 'refused';
  const area = result.analysis.measurement.measurements.erythemaArea;
  if ('notMeasured' in area) return area.notMeasured === 'noRegionFound' ? 'nothingFound' : 'toAPerson';
  return area.value > trueMm2 / 2 && area.value < trueMm2 * 2 ? 'found' : 'farOff';
}

function rowOf(skinClass: SkinClass, all: readonly Answer[]): ClassRow {
  const answers = Object.fromEntries(ANSWERS.map((answer) => [answer, all.filter((one) => one === answer).length])) as Record<Answer, number>;
  const photos = all.length;
  return { skinClass, photos, answers, sensitivity: answers.found / photos, notMissed: (answers.found + answers.toAPerson + answers.refused) / photos };
}

/**
 * Classes that are worse served than the limit allows: what neither was found nor went to a person, beside the best class.
 * @example unfairClasses([{ notMissed: 1 }, { notMissed: 0.9 }]) // one sentence
 */
export function unfairClasses(rows: readonly Pick<ClassRow, 'skinClass' | 'notMissed'>[]): string[] {
  const best = Math.max(...rows.map(({ notMissed }) => notMissed));
  return rows.filter(({ notMissed }) => notMissed < best - MOST_BEHIND).map(({ skinClass, notMissed }) => `${skinClass}: ${(100 * notMissed).toFixed(0)} % not missed, the best class ${(100 * best).toFixed(0)} %`);
}
