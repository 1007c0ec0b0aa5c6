/** Who asks. Made from a session or a start-up setting, never from what a request claims about itself. */
export const STAFF_ROLES = ['nurse', 'clinician', 'lead', 'admin'] as const;
export type StaffRole = (typeof STAFF_ROLES)[number];

export interface Patient {
  readonly role: 'patient';
  readonly episodeId: string;
  readonly clinicId: string;
  /** The clinic asks for the year of birth, and it has not been answered yet. */
  readonly birthYearOwed: boolean;
}

export interface StaffMember {
  readonly role: StaffRole;
  readonly staffId: string;
  readonly clinicId: string;
}

export type Actor = { readonly role: 'anonymous' } | Patient | StaffMember;
export type Role = Actor['role'];

export const ANONYMOUS: Actor = { role: 'anonymous' };

/**
 * How the audit list names somebody: a role and an id, no name.
 *
 * @param actor who acted
 * @returns role and id with a colon between; the role alone where there is no id
 * @example actorName({ role: 'nurse', staffId: 's1', clinicId: 'c1' }) // 'nurse:s1'
 */
export function actorName(actor: Actor): string {
  if (actor.role === 'anonymous') return 'anonymous';
  return actor.role === 'patient' ? `patient:${actor.episodeId}` : `${actor.role}:${actor.staffId}`;
}
