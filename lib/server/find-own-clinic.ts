import type { Actor } from '../access/actor';
import type { Resource } from '../access/guard';

/** What a list of a whole clinic is about: that clinic and no single episode; null where nobody of the staff asks. */
export const findOwnClinic = (actor: Actor): Resource | null => ('staffId' in actor ? { episodeId: '', clinicId: actor.clinicId } : null);
