/**
 * Who may do what, all of it on one screen. What has no row here is refused. `own` is the episode that a personal link
 * opens; `clinic` is an episode of the same clinic; `any` belongs to nobody.
 */
import { type Role, STAFF_ROLES } from './actor';

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
  'method.read',
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
  'episode.close',
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
  'password.change',
] as const;
export type Action = (typeof ACTIONS)[number];

/** One row for each role. */
const allow = (action: Action, scope: Scope, ...roles: readonly Role[]): AccessRow[] => roles.map((role) => ({ role, action, scope }));
/** Also before the year of birth has been answered. */
const patientAtOnce = (action: Action, scope: Scope): AccessRow => ({ role: 'patient', action, scope, beforeBirthYear: true });

const STAFF = STAFF_ROLES;
/** An admin keeps the accounts and sees no patient. */
const LOOKING_AFTER = ['nurse', 'clinician', 'lead'] as const;
/** Whoever judges a case at the follow-up. */
const JUDGING = ['clinician', 'lead'] as const;

export const ACCESS_TABLE: readonly AccessRow[] = [
  ...allow('health.read', 'any', 'anonymous', ...STAFF),
  patientAtOnce('health.read', 'any'),
  // How it is measured is no secret.
  ...allow('method.read', 'any', 'anonymous', ...STAFF),
  patientAtOnce('method.read', 'any'),
  // A personal link opens for whoever holds it, also on a phone on which another one was open.
  ...allow('link.open', 'any', 'anonymous', ...STAFF),
  patientAtOnce('link.open', 'any'),

  patientAtOnce('session.leave', 'own'),
  patientAtOnce('birthYear.answer', 'own'),
  ...allow('state.read', 'own', 'patient'),
  ...allow('photo.send', 'own', 'patient'),
  ...allow('verdict.read', 'own', 'patient'),
  ...allow('checkIn.send', 'own', 'patient'),

  ...allow('photo.view', 'own', 'patient'),
  ...allow('photo.view', 'clinic', ...LOOKING_AFTER),
  ...allow('episode.read', 'clinic', ...LOOKING_AFTER),

  // Whoever knows address and password; also where somebody else is still signed in.
  ...allow('staff.signIn', 'any', 'anonymous', ...STAFF),
  patientAtOnce('staff.signIn', 'any'),
  ...allow('staff.signOut', 'clinic', ...STAFF),

  ...allow('review.read', 'clinic', ...LOOKING_AFTER),
  ...allow('review.claim', 'clinic', ...LOOKING_AFTER),
  ...allow('review.resolve', 'clinic', ...LOOKING_AFTER),

  // Whoever looks after people starts their episodes, and hands out cards and links.
  ...allow('episode.start', 'clinic', ...LOOKING_AFTER),
  ...allow('episode.handOut', 'clinic', ...LOOKING_AFTER),
  ...allow('episode.photo', 'clinic', ...LOOKING_AFTER),

  // Draws its outlines anew, ends the follow-up, or opens it again.
  ...allow('outline.redraw', 'clinic', ...JUDGING),
  ...allow('episode.close', 'clinic', ...JUDGING),

  // Whoever works by the clinic's plans and limits reads them; a lead changes them.
  ...allow('plans.read', 'clinic', ...LOOKING_AFTER),
  ...allow('plans.change', 'clinic', 'lead'),
  ...allow('rules.read', 'clinic', ...LOOKING_AFTER),
  ...allow('rules.change', 'clinic', 'lead'),

  // An admin lets people in and out; who did what is also read by a lead.
  ...allow('people.read', 'clinic', 'admin'),
  ...allow('people.change', 'clinic', 'admin'),
  ...allow('audit.read', 'clinic', 'lead', 'admin'),
  ...allow('clinic.change', 'clinic', 'lead', 'admin'),
  // Whoever holds an invitation; it says itself for whom it is.
  ...allow('invitation.use', 'any', 'anonymous', ...STAFF),
  patientAtOnce('invitation.use', 'any'),
  // One's own, whatever one's role.
  ...allow('secondFactor.change', 'clinic', ...STAFF),
  ...allow('password.change', 'clinic', ...STAFF),
];
