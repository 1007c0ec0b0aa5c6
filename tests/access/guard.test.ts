import { describe, expect, it } from 'vitest';
import { ACCESS_TABLE, ACTIONS, type Action } from '../../lib/access/access-table';
import { type Actor, ANONYMOUS, type StaffRole } from '../../lib/access/actor';
import { guard } from '../../lib/access/guard';

const OURS = { episodeId: 'episode-1', clinicId: 'clinic-1' };
const patient = (episodeId: string, clinicId: string, birthYearOwed = false): Actor => ({ role: 'patient', episodeId, clinicId, birthYearOwed });
const staff = (role: StaffRole, clinicId: string): Actor => ({ role, staffId: 's', clinicId });

/** Everybody who may ask about episode 1 of clinic 1. */
const ASKING = {
  anonymous: ANONYMOUS,
  'this patient': patient('episode-1', 'clinic-1'),
  'this patient, year of birth owed': patient('episode-1', 'clinic-1', true),
  'another patient': patient('episode-2', 'clinic-1'),
  'a patient of another clinic': patient('episode-3', 'clinic-2'),
  'a nurse': staff('nurse', 'clinic-1'),
  'a clinician': staff('clinician', 'clinic-1'),
  'a lead': staff('lead', 'clinic-1'),
  'an admin': staff('admin', 'clinic-1'),
  'a nurse of another clinic': staff('nurse', 'clinic-2'),
  'a lead of another clinic': staff('lead', 'clinic-2'),
} as const;
type Asking = keyof typeof ASKING;
const EVERYBODY = Object.keys(ASKING) as Asking[];

/** An admin keeps the accounts and sees no patient. */
const LOOKING_AFTER: readonly Asking[] = ['a nurse', 'a clinician', 'a lead'];

/** Written out by hand, not read from the table: who may do what with episode 1. */
const MAY: Readonly<Record<Action, readonly Asking[]>> = {
  'health.read': EVERYBODY,
  'method.read': EVERYBODY,
  'link.open': EVERYBODY,
  'session.leave': ['this patient', 'this patient, year of birth owed'],
  'birthYear.answer': ['this patient', 'this patient, year of birth owed'],
  'state.read': ['this patient'],
  'photo.send': ['this patient'],
  'verdict.read': ['this patient'],
  'checkIn.send': ['this patient'],
  'photo.view': ['this patient', ...LOOKING_AFTER],
  'staff.signIn': EVERYBODY,
  'staff.signOut': [...LOOKING_AFTER, 'an admin'],
  'review.read': LOOKING_AFTER,
  'review.claim': LOOKING_AFTER,
  'review.resolve': LOOKING_AFTER,
  'episode.read': LOOKING_AFTER,
  'episode.start': LOOKING_AFTER,
  'episode.handOut': LOOKING_AFTER,
  'outline.redraw': ['a clinician', 'a lead'],
  'episode.close': ['a clinician', 'a lead'],
  'episode.photo': LOOKING_AFTER,
  'plans.read': LOOKING_AFTER,
  'plans.change': ['a lead'],
  'rules.read': LOOKING_AFTER,
  'rules.change': ['a lead'],
  'people.read': ['an admin'],
  'people.change': ['an admin'],
  'audit.read': ['a lead', 'an admin'],
  'clinic.change': ['a lead', 'an admin'],
  'invitation.use': EVERYBODY,
  'secondFactor.change': [...LOOKING_AFTER, 'an admin'],
  'password.change': [...LOOKING_AFTER, 'an admin'],
};

describe.each(ACTIONS)('%s', (action) => {
  it.each(EVERYBODY)('by %s is decided as written', (asking) => {
    expect(guard(ASKING[asking], action, OURS).allowed).toBe(MAY[action].includes(asking));
  });
});

it('refuses what has no row, whoever asks', () => {
  for (const actor of Object.values(ASKING)) expect(guard(actor, 'photo.delete' as Action, OURS).allowed).toBe(false);
});

it('refuses a resource that does not exist', () => {
  const about = ACTIONS.filter((action) => MAY[action] !== EVERYBODY);
  for (const action of about) for (const actor of Object.values(ASKING)) expect(guard(actor, action, null).allowed).toBe(false);
});

it('says which row allowed it, and why it refused', () => {
  expect(guard(ASKING['a nurse'], 'photo.view', OURS)).toMatchObject({ allowed: true, rule: 'nurse may photo.view (clinic)', episodeId: 'episode-1' });
  expect(guard(ANONYMOUS, 'state.read', null)).toEqual({ allowed: false, because: 'notSignedIn' });
  expect(guard(ASKING['this patient, year of birth owed'], 'state.read', OURS)).toEqual({ allowed: false, because: 'birthYearOwed' });
  expect(guard(ASKING['another patient'], 'state.read', OURS)).toEqual({ allowed: false, because: 'notYours' });
});

it('has each row once', () => {
  const rows = ACCESS_TABLE.map(({ role, action, scope }) => `${role} ${action} ${scope}`);
  expect(new Set(rows).size).toBe(rows.length);
});
