import { MOST_CLOCK_ERROR_HOURS } from '../care/constants';
import type { EpisodeJson } from '../care/episode';
import { MS_PER_HOUR } from '../care/instant';
import type { RuleRows } from '../edges/db/read-rule-rows';
import type { AnalysisJson } from '../pipeline/analysis-json';

type CheckInJson = EpisodeJson['checkIns'][number];
type PhotoRows = RuleRows['photos'][number];

/**
 * An episode as the rules read it, from its rows. A check-in has the newest usable photo of those that were sent with
 * it; each of the others stands for itself, at the time it came, for a photo that could not be used is a fact too.
 */
export function episodeJson(rows: RuleRows, now: string): EpisodeJson {
  const { procedure, plans, risks, antibioticStartedAt, closedAt, resolutions } = rows;
  if (procedure === null) throw new Error(`The episode ${rows.id} has no procedure.`);
  const { episodeId: _, recordedAt: __, at, treatedSides, anaestheticAt, ...facts } = procedure;
  return {
    id: rows.id,
    procedure: {
      ...(facts as Omit<EpisodeJson['procedure'], 'at'>),
      at: at.toISOString(),
      treatedSides: JSON.parse(treatedSides),
      edge: (facts.edge ?? undefined) as EpisodeJson['procedure']['edge'],
      anaestheticAt: anaestheticAt?.toISOString() ?? null,
    },
    risks: JSON.parse(risks),
    plan: plans.length > 0 ? JSON.parse(plans[0].json) : undefined,
    antibioticStartedAt: antibioticStartedAt?.toISOString() ?? null,
    now,
    checkIns: checkInsOf(rows),
    resolutions: resolutions.map(({ rule, at: when, by, reason, outcome }) => ({
      rule,
      by,
      reason,
      at: when.toISOString(),
      outcome: (outcome ?? undefined) as 'confirmed' | 'dismissed' | undefined,
    })),
    closedAt: closedAt?.toISOString() ?? null,
  };
}

function checkInsOf(rows: RuleRows): CheckInJson[] {
  const toes = rows.photos.filter((photo) => photo.kind === 'toe' && isKnown(photo));
  const shown = new Set<string>();
  const answered = rows.checkIns.map((row): CheckInJson => {
    const own = toes.filter((photo) => photo.clientId === row.clientId && !shown.has(photo.id));
    const best = own.findLast(isMeasured) ?? own.at(-1);
    if (best) shown.add(best.id);
    const at = believableTime(row.at, row.receivedAt, rows);
    return { id: row.id, at, answers: JSON.parse(row.answers), photo: best ? photoOf(best) : null };
  });
  const alone = toes.filter(({ id }) => !shown.has(id));
  return [...answered, ...alone.map((photo) => ({ id: photo.id, at: photo.receivedAt.toISOString(), photo: photoOf(photo) }))];
}

/**
 * The phone's clock counts, for it may have been offline; but nothing comes before it is sent, and nobody has had a word
 * on what had not come: then the time it came counts.
 */
function believableTime(at: string, received: Date, rows: RuleRows): string {
  const [said, came, procedure] = [Date.parse(at), received.getTime(), rows.procedure?.at.getTime() ?? 0];
  const resolvedMeanwhile = rows.resolutions.some((one) => one.at.getTime() >= said && one.at.getTime() < came);
  const isWrong = said > came || said < procedure - MOST_CLOCK_ERROR_HOURS * MS_PER_HOUR;
  return isWrong || resolvedMeanwhile ? received.toISOString() : at;
}

/** Something is known about it. A photo with somebody else's card says nothing about this toe. */
const isKnown = ({ analyses: [analysis] }: PhotoRows): boolean => analysis !== undefined && analysis.outcome !== 'held';
const isMeasured = ({ analyses: [analysis] }: PhotoRows): boolean => analysis?.outcome === 'measured';

function photoOf({ id, receivedAt, analyses: [analysis], outlines: [redrawn] }: PhotoRows): NonNullable<CheckInJson['photo']> {
  const known = { id, receivedAt: receivedAt.toISOString() };
  if (analysis.json === null) return { ...known, measured: false, reasons: ['unread'] };
  const json = JSON.parse(analysis.json) as Pick<AnalysisJson, 'colour' | 'measurements'>;
  return {
    ...known,
    measured: analysis.outcome === 'measured',
    reasons: JSON.parse(analysis.gates),
    itaDeg: json.colour?.itaDeg ?? null,
    contrastToNoise: json.colour?.contrastToNoise ?? null,
    measurements: redrawn ? JSON.parse(redrawn.measurements) : json.measurements,
  };
}
