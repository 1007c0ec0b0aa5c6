import type { Actor } from '../access/actor';
import type { Resource } from '../access/guard';

/** The episode that a patient's session is about; null for everybody else. */
export const ownEpisode = (actor: Actor): Resource | null =>
  actor.role === 'patient' ? { episodeId: actor.episodeId, clinicId: actor.clinicId } : null;
