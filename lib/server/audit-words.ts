import type { Action } from '../access/access-table';
import type { AuditAction } from '../care/audit-actions';
import { LIMIT_IDS } from '../decide/rule-book';
import { limitWords } from '../report/limit-words';
import { ACTION_WORDS } from '../review/constants';
import type { DrawnOutline } from '../segment/edge-cost';

const DONE: Readonly<Record<AuditAction, string>> = {
  'link.open': 'Opened the personal link',
  'link.renew': 'Made a new personal link',
  'link.end': 'Ended the personal link',
  'checkIn.send': 'Sent answers',
  'photo.send': 'Sent a photo',
  'photo.before': 'Added a photo from before the procedure',
  'photo.after': 'Added a photo from after the procedure',
  'photo.view': 'Looked at a photo',
  'staff.signIn': 'Signed in',
  'staff.signOut': 'Signed out',
  'review.read': 'Looked at the review list',
  'review.open': 'Opened a case on the review list',
  'review.claim': 'Took a case to work on',
  'review.takeOver': 'Took over a case that somebody else had open',
  'review.resolve': 'Said what was done about a case',
  'episode.start': 'Started an episode',
  'episode.read': 'Opened the page of a case',
  'episode.report': 'Opened the report of a case',
  'episode.report.pdf': 'Took the report of a case as a PDF',
  'episode.csv': 'Took the numbers of a case as a table',
  'episode.fhir': 'Took a case as a FHIR file',
  'episode.close': 'Closed a case',
  'episode.reopen': 'Opened a closed case again',
  'handOut.read': 'Looked at the cards and the link of a case',
  'sheet.print': 'Printed the sheet with the card',
  'card.add': 'Added a card',
  'card.retire': 'Took a card out of use',
  'card.measure': 'Wrote down what the bar of a card measures',
  'outline.redraw': 'Drew an outline anew',
  'plans.add': 'Added a plan',
  'plans.change': 'Changed a plan',
  'plans.retire': 'Took a plan out of use',
  'rules.change': 'Changed the rule book',
  'people.invite': 'Invited somebody',
  'people.role': 'Gave somebody another role',
  'people.end': 'Ended somebody’s access',
  'people.endFactor': 'Ended somebody’s second factor',
  'invitation.use': 'Joined by an invitation',
  'secondFactor.confirm': 'Began to use a second factor',
  'secondFactor.end': 'Ended their own second factor',
  'password.change': 'Changed their own password',
  'clinic.change': 'Changed what the clinic says of itself',
  'audit.read': 'Read this list',
};

const MAY: Readonly<Record<Action, string>> = {
  'health.read': 'see whether the program runs',
  'method.read': 'read how it is measured',
  'link.open': 'open a personal link',
  'session.leave': 'leave the page for good',
  'birthYear.answer': 'answer the year of birth',
  'state.read': 'see today’s page',
  'photo.send': 'send photos',
  'verdict.read': 'see whether a photo can be used',
  'checkIn.send': 'send answers',
  'photo.view': 'look at photos',
  'staff.signIn': 'sign in',
  'staff.signOut': 'sign out',
  'review.read': 'see the review list and its cases',
  'review.claim': 'take a case to work on',
  'review.resolve': 'say what was done about a case',
  'episode.read': 'see a case',
  'episode.start': 'start episodes',
  'episode.handOut': 'hand out cards and links',
  'episode.photo': 'add photos of the day of the procedure',
  'outline.redraw': 'draw outlines anew',
  'episode.close': 'close and reopen cases',
  'plans.read': 'see the plans',
  'plans.change': 'change the plans',
  'rules.read': 'see the rule book',
  'rules.change': 'change the rule book',
  'people.read': 'see who works here',
  'people.change': 'let people in and out',
  'audit.read': 'read this list',
  'clinic.change': 'change what the clinic says of itself',
  'invitation.use': 'use an invitation',
  'secondFactor.change': 'change their own second factor',
  'password.change': 'change their own password',
};

const OUTLINES: Readonly<Record<DrawnOutline, string>> = { erythema: 'redness', nailFoldMargin: 'nail-fold margin', raw: 'raw surface' };

const DETAILS: ReadonlyMap<string, string> = new Map([
  ...Object.entries(OUTLINES),
  ...Object.entries(ACTION_WORDS).map(([action, { words }]): [string, string] => [action, words.toLowerCase()]),
  ...LIMIT_IDS.map((id): [string, string] => [id, limitWords(id).name]),
]);

const wordsOr = (table: Readonly<Record<string, string>>, code: string): string => (Object.hasOwn(table, code) ? table[code] : code);

/**
 * What was done, in words.
 *
 * @param note as kept: an action, and after spaces what it was about
 * @param names of staff, by their ids
 * @returns a code that today's list does not know stays as it is: a row may be older than the program
 * @example auditWords('outline.redraw erythema', new Map()) // 'Drew an outline anew: redness'
 */
export function auditWords(note: string, names: ReadonlyMap<string, string>): string {
  const [action, ...about] = note.split(' ');
  const details = about.map((one) => names.get(one) ?? DETAILS.get(one) ?? one);
  return [wordsOr(DONE, action), ...(details.length > 0 ? [details.join('; ')] : [])].join(': ');
}

/**
 * What allowed it, in words.
 *
 * @param rule as the guard names a row of the access table
 * @returns anything else as it is
 * @example allowedWords('nurse may episode.read (clinic)') // 'nurse may see a case'
 */
export function allowedWords(rule: string): string {
  const [, role, action] = /^(\w+) may (\S+) \(\w+\)$/.exec(rule) ?? [];
  return action !== undefined && Object.hasOwn(MAY, action) ? `${role} may ${MAY[action as Action]}` : rule;
}
