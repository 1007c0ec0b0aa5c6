import type { Followed } from '../care/measurement-schema';
import { compareReaches } from './compare';
import type { Entry, SeenPhoto } from './course';
import type { VisitValue } from './visit-value';

/** Check-ins less than six hours apart, taken together. */
export interface Visit {
  readonly startHours: number;
  /** Nothing more can join it from here on. */
  readonly closesHours: number;
  readonly closed: boolean;
  readonly entries: readonly Entry[];
  /** Photos the server had by the moment in question. */
  readonly photos: readonly SeenPhoto[];
  readonly usablePhotos: readonly SeenPhoto[];
  /** Hours at which the newest piece of it was known. */
  readonly knownHours: number;
  /** Values already read from its photos, so that every rule at every moment need not read them again. */
  readonly values: Map<Followed, VisitValue | null>;
}

/**
 * Groups check-ins into visits: all of a visit lie less than so many hours after its first.
 *
 * @param entries oldest first
 * @param visitHours 6 by default
 * @returns lists of entries, oldest first. Counted from the first and not from one to the next, so that someone who
 * sends every five hours still closes a visit.
 * @example groupVisits(entries, 6).length // 12
 */
export function groupVisits(entries: readonly Entry[], visitHours: number): Entry[][] {
  const groups: Entry[][] = [];
  for (const entry of entries) {
    const group = groups.at(-1);
    if (group && !compareReaches(entry.hours - group[0].hours, visitHours)) group.push(entry);
    else groups.push([entry]);
  }
  return groups;
}

/**
 * One visit as it was known at a moment.
 *
 * @param group entries of the visit, the first of them already there
 * @param visitHours 6 by default
 * @param hours the moment
 * @example visitsAsOf(group, 6, 30).closed // true
 */
export function visitsAsOf(group: readonly Entry[], visitHours: number, hours: number): Visit {
  const entries = group.filter((entry) => entry.hours <= hours);
  const photos = entries.flatMap(({ photo }) => (photo && photo.knownHours <= hours ? [photo] : []));
  const startHours = group[0].hours;
  const times = [...entries.map((entry) => entry.hours), ...photos.map((photo) => photo.knownHours)];
  return {
    startHours,
    closesHours: startHours + visitHours,
    closed: compareReaches(hours, startHours + visitHours),
    entries,
    photos,
    usablePhotos: photos.filter(({ usable }) => usable),
    knownHours: Math.max(...times),
    values: new Map(),
  };
}
