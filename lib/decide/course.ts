import type { Answers } from '../care/answers';
import type { CheckIn, Photo } from '../care/check-in';
import type { Episode } from '../care/episode';
import { hoursBetweenInstants, MS_PER_HOUR } from '../care/instant';
import { isAtRisk } from '../care/is-at-risk';
import type { FollowedMeasurements } from '../care/measurement-schema';

export interface SeenPhoto {
  readonly name: string;
  /** Hours after the procedure at which the server had it. */
  readonly knownHours: number;
  /** Measured, and no gate failed. */
  readonly usable: boolean;
  readonly reasons: readonly string[];
  readonly itaDeg: number | null;
  readonly measurements: FollowedMeasurements;
}

/** A check-in on the course's own clock. */
export interface Entry {
  readonly hours: number;
  /** ISO 8601, UTC. */
  readonly at: string;
  readonly answers: Answers;
  readonly photo: SeenPhoto | null;
}

/** An episode as the rules read it: hours since the procedure instead of dates, in order of time. */
export interface Course {
  readonly episode: Episode;
  readonly nowHours: number;
  readonly entries: readonly Entry[];
  readonly antibioticHours: number | null;
  readonly closedHours: number;
  readonly atRisk: boolean;
  /** ISO 8601 in UTC of an hour of this course. */
  readonly timeOf: (hours: number) => string;
}

/**
 * Puts an episode on its own clock. The order of the check-ins and the zones of their times do not matter.
 *
 * @param episode as parsed
 * @returns hours after the procedure; a phone's clock that runs ahead is taken back to now, one before the procedure to 0
 * @example prepareCourse(episode).entries[0].hours // 24
 */
export function prepareCourse(episode: Episode): Course {
  const start = episode.procedure.at;
  const nowHours = hoursBetweenInstants(start, episode.now);
  const hoursAt = (instant: string) => hoursBetweenInstants(start, instant);
  const startMs = Date.parse(start);
  const timeOf = (hours: number) => new Date(Math.round(startMs + hours * MS_PER_HOUR)).toISOString();
  const within = (hours: number) => Math.min(Math.max(0, hours), nowHours);
  const entries = inOrder(episode.checkIns, (checkIn) => within(hoursAt(checkIn.at))).map(({ checkIn, hours }): Entry => {
    const at = timeOf(hours);
    return { hours, at, answers: checkIn.answers, photo: checkIn.photo ? seePhoto(checkIn.photo, at, hours, (one) => within(hoursAt(one))) : null };
  });
  return {
    episode,
    nowHours,
    entries,
    antibioticHours: episode.antibioticStartedAt ? hoursAt(episode.antibioticStartedAt) : null,
    closedHours: episode.closedAt ? hoursAt(episode.closedAt) : Infinity,
    atRisk: isAtRisk(episode),
    timeOf,
  };
}

function seePhoto(photo: Photo, at: string, hours: number, hoursAt: (instant: string) => number): SeenPhoto {
  const reasons = photo.reasons.map((reason) => (typeof reason === 'string' ? reason : reason.gate));
  return {
    name: photo.id ?? at,
    knownHours: photo.receivedAt ? Math.max(hours, hoursAt(photo.receivedAt)) : hours,
    usable: photo.measured && reasons.length === 0,
    reasons,
    itaDeg: photo.itaDeg ?? null,
    measurements: photo.measurements,
  };
}

/** By time; where two share one moment, by their content, so that the order in the file can never matter. */
function inOrder(checkIns: readonly CheckIn[], hoursOf: (checkIn: CheckIn) => number): { checkIn: CheckIn; hours: number }[] {
  const timed = checkIns.map((checkIn) => ({ checkIn, hours: hoursOf(checkIn) }));
  return timed.sort((a, b) => a.hours - b.hours || (JSON.stringify(a.checkIn) < JSON.stringify(b.checkIn) ? -1 : 1));
}
