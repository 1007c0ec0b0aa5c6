import { ACCESS_TABLE, type AccessRow, type Action } from './access-table';
import type { Actor } from './actor';

declare const authorised: unique symbol;
/** An episode that the guard has let somebody at. Minted here only. */
export type AuthorisedEpisodeId = string & { readonly [authorised]: true };

/** What is asked for: an episode and the clinic it belongs to; null where the action is about none. */
export interface Resource {
  readonly episodeId: string;
  readonly clinicId: string;
}

export type Verdict =
  | { readonly allowed: true; readonly episodeId: AuthorisedEpisodeId; /** The row that allowed it, for the audit list. */ readonly rule: string }
  | { readonly allowed: false; readonly because: 'notSignedIn' | 'birthYearOwed' | 'notYours' };

/**
 * May this actor do this? Without a row in the table the answer is no.
 *
 * @param actor who asks
 * @param action what for
 * @param resource of which episode; null where there is none, which only rows of scope `any` accept
 * @returns the authorised episode with the row that allowed it, or why not
 * @example guard({ role: 'anonymous' }, 'state.read', null).because // 'notSignedIn'
 */
export function guard(actor: Actor, action: Action, resource: Resource | null): Verdict {
  const row = ACCESS_TABLE.find((one) => one.role === actor.role && one.action === action && covers(one, actor, resource));
  if (row === undefined) return { allowed: false, because: actor.role === 'anonymous' ? 'notSignedIn' : 'notYours' };
  if (actor.role === 'patient' && actor.birthYearOwed && !row.beforeBirthYear) return { allowed: false, because: 'birthYearOwed' };
  const episodeId = (resource?.episodeId ?? '') as AuthorisedEpisodeId;
  return { allowed: true, episodeId, rule: `${row.role} may ${row.action} (${row.scope})` };
}

function covers({ scope }: AccessRow, actor: Actor, resource: Resource | null): boolean {
  if (scope === 'any') return true;
  if (resource === null || actor.role === 'anonymous' || actor.clinicId !== resource.clinicId) return false;
  return scope === 'clinic' ? actor.role !== 'patient' : actor.role === 'patient' && actor.episodeId === resource.episodeId;
}
