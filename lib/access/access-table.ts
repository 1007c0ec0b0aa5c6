/**
 * Who may do what, all of it on one screen. What has no row here is refused. `own` is the episode that a personal link
 * opens; `clinic` is an episode of the same clinic; `any` belongs to nobody.
 */
import type { Role } from './actor';

export type Scope = 'own' | 'clinic' | 'any';

export interface AccessRow {
  readonly role: Role;
  readonly action: Action;
  readonly scope: Scope;
  /** Also before the year of birth has been answered. */
  readonly beforeBirthYear?: true;
}

export const ACTIONS = [
  'health.read',
  'link.open',
  'session.leave',
  'birthYear.answer',
  'state.read',
  'photo.send',
  'verdict.read',
  'checkIn.send',
  'photo.view',
  'staff.signIn',
  'staff.signOut',
  'review.read',
  'review.claim',
  'review.resolve',
  'episode.read',
  'episode.start',
  'episode.handOut',
  'episode.photo',
  'outline.redraw',
  'plans.read',
  'plans.change',
  'rules.read',
  'rules.change',
  'people.read',
  'people.change',
  'audit.read',
  'clinic.change',
  'invitation.use',
  'secondFactor.change',
] as const;
export type Action = (typeof ACTIONS)[number];

export const ACCESS_TABLE: readonly AccessRow[] = [
  { role: 'anonymous', action: 'health.read', scope: 'any' },
  { role: 'patient', action: 'health.read', scope: 'any', beforeBirthYear: true },
  { role: 'nurse', action: 'health.read', scope: 'any' },
  { role: 'clinician', action: 'health.read', scope: 'any' },
  { role: 'lead', action: 'health.read', scope: 'any' },
  { role: 'admin', action: 'health.read', scope: 'any' },

  // A personal link opens for whoever holds it, also on a phone on which another one was open.
  { role: 'anonymous', action: 'link.open', scope: 'any' },
  { role: 'patient', action: 'link.open', scope: 'any', beforeBirthYear: true },
  { role: 'nurse', action: 'link.open', scope: 'any' },
  { role: 'clinician', action: 'link.open', scope: 'any' },
  { role: 'lead', action: 'link.open', scope: 'any' },
  { role: 'admin', action: 'link.open', scope: 'any' },

  { role: 'patient', action: 'session.leave', scope: 'own', beforeBirthYear: true },
  { role: 'patient', action: 'birthYear.answer', scope: 'own', beforeBirthYear: true },
  { role: 'patient', action: 'state.read', scope: 'own' },
  { role: 'patient', action: 'photo.send', scope: 'own' },
  { role: 'patient', action: 'verdict.read', scope: 'own' },
  { role: 'patient', action: 'checkIn.send', scope: 'own' },

  { role: 'patient', action: 'photo.view', scope: 'own' },
  { role: 'nurse', action: 'photo.view', scope: 'clinic' },
  { role: 'clinician', action: 'photo.view', scope: 'clinic' },
  { role: 'lead', action: 'photo.view', scope: 'clinic' },

  { role: 'nurse', action: 'episode.read', scope: 'clinic' },
  { role: 'clinician', action: 'episode.read', scope: 'clinic' },
  { role: 'lead', action: 'episode.read', scope: 'clinic' },

  // Whoever knows address and password; also where somebody else is still signed in.
  { role: 'anonymous', action: 'staff.signIn', scope: 'any' },
  { role: 'patient', action: 'staff.signIn', scope: 'any', beforeBirthYear: true },
  { role: 'nurse', action: 'staff.signIn', scope: 'any' },
  { role: 'clinician', action: 'staff.signIn', scope: 'any' },
  { role: 'lead', action: 'staff.signIn', scope: 'any' },
  { role: 'admin', action: 'staff.signIn', scope: 'any' },
  { role: 'nurse', action: 'staff.signOut', scope: 'clinic' },
  { role: 'clinician', action: 'staff.signOut', scope: 'clinic' },
  { role: 'lead', action: 'staff.signOut', scope: 'clinic' },
  { role: 'admin', action: 'staff.signOut', scope: 'clinic' },

  // An admin keeps the accounts and sees no patient.
  { role: 'nurse', action: 'review.read', scope: 'clinic' },
  { role: 'clinician', action: 'review.read', scope: 'clinic' },
  { role: 'lead', action: 'review.read', scope: 'clinic' },
  { role: 'nurse', action: 'review.claim', scope: 'clinic' },
  { role: 'clinician', action: 'review.claim', scope: 'clinic' },
  { role: 'lead', action: 'review.claim', scope: 'clinic' },
  { role: 'nurse', action: 'review.resolve', scope: 'clinic' },
  { role: 'clinician', action: 'review.resolve', scope: 'clinic' },
  { role: 'lead', action: 'review.resolve', scope: 'clinic' },

  // Whoever looks after people starts their episodes, and hands out cards and links.
  { role: 'nurse', action: 'episode.start', scope: 'clinic' },
  { role: 'clinician', action: 'episode.start', scope: 'clinic' },
  { role: 'lead', action: 'episode.start', scope: 'clinic' },
  { role: 'nurse', action: 'episode.handOut', scope: 'clinic' },
  { role: 'clinician', action: 'episode.handOut', scope: 'clinic' },
  { role: 'lead', action: 'episode.handOut', scope: 'clinic' },
  { role: 'nurse', action: 'episode.photo', scope: 'clinic' },
  { role: 'clinician', action: 'episode.photo', scope: 'clinic' },
  { role: 'lead', action: 'episode.photo', scope: 'clinic' },

  // Whoever judges a case at the follow-up draws its outlines anew.
  { role: 'clinician', action: 'outline.redraw', scope: 'clinic' },
  { role: 'lead', action: 'outline.redraw', scope: 'clinic' },

  // Whoever works by the clinic's plans and limits reads them; a lead changes them.
  { role: 'nurse', action: 'plans.read', scope: 'clinic' },
  { role: 'clinician', action: 'plans.read', scope: 'clinic' },
  { role: 'lead', action: 'plans.read', scope: 'clinic' },
  { role: 'lead', action: 'plans.change', scope: 'clinic' },
  { role: 'nurse', action: 'rules.read', scope: 'clinic' },
  { role: 'clinician', action: 'rules.read', scope: 'clinic' },
  { role: 'lead', action: 'rules.read', scope: 'clinic' },
  { role: 'lead', action: 'rules.change', scope: 'clinic' },

  // An admin lets people in and out; who did what is also read by a lead.
  { role: 'admin', action: 'people.read', scope: 'clinic' },
  { role: 'admin', action: 'people.change', scope: 'clinic' },
  { role: 'lead', action: 'audit.read', scope: 'clinic' },
  { role: 'admin', action: 'audit.read', scope: 'clinic' },
  { role: 'lead', action: 'clinic.change', scope: 'clinic' },
  { role: 'admin', action: 'clinic.change', scope: 'clinic' },
  // Whoever holds an invitation; it says itself for whom it is.
  { role: 'anonymous', action: 'invitation.use', scope: 'any' },
  { role: 'patient', action: 'invitation.use', scope: 'any', beforeBirthYear: true },
  { role: 'nurse', action: 'invitation.use', scope: 'any' },
  { role: 'clinician', action: 'invitation.use', scope: 'any' },
  { role: 'lead', action: 'invitation.use', scope: 'any' },
  { role: 'admin', action: 'invitation.use', scope: 'any' },
  // One's own, whatever one's role.
  { role: 'nurse', action: 'secondFactor.change', scope: 'clinic' },
  { role: 'clinician', action: 'secondFactor.change', scope: 'clinic' },
  { role: 'lead', action: 'secondFactor.change', scope: 'clinic' },
  { role: 'admin', action: 'secondFactor.change', scope: 'clinic' },
];
