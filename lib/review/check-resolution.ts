import { ACTION_WORDS, LEAST_NOTE_LETTERS, MOST_NOTE_LETTERS, RESOLUTION_ACTIONS, type ResolutionAction } from './constants';

/** What a person has entered. */
export interface EnteredResolution {
  readonly action: string;
  readonly note: string;
  /** For "message sent": the words that the patient reads. */
  readonly message: string | null;
  /** Where it is asked whether the toe is dry. */
  readonly dryness: 'confirmed' | 'dismissed' | null;
}

export interface KeptResolution {
  readonly action: ResolutionAction;
  /** Never empty. */
  readonly reason: string;
  readonly message: string | null;
  readonly dryness: 'confirmed' | 'dismissed' | null;
  /** A question to the clinician leaves the case open until somebody has answered. */
  readonly leavesOpen: boolean;
}

/**
 * What a resolution must record: an action we know, a reason where one is asked for, the words of a message, and, where
 * "dry" is among the findings, whether the person agrees. Silence is never taken as agreement: it would end the follow-up.
 *
 * @param entered as it came
 * @param asksDryness whether "dry" is open on the case
 * @returns what is kept, or one sentence naming what is missing
 * @example checkResolution({ action: 'nothingNeeded', note: ' ', message: null, dryness: null }, false) // { problem: 'Why is nothing needed? A note is kept with this.' }
 */
export function checkResolution(entered: EnteredResolution, asksDryness: boolean): { readonly kept: KeptResolution } | { readonly problem: string } {
  const action = RESOLUTION_ACTIONS.find((one) => one === entered.action);
  if (action === undefined) return { problem: `There is no action “${entered.action}”.` };
  const { said, noteAsks } = ACTION_WORDS[action];
  const [note, message] = [entered.note.trim(), entered.message?.trim() ?? ''];
  if (note.length > MOST_NOTE_LETTERS || message.length > MOST_NOTE_LETTERS) {
    return { problem: `A note has at most ${MOST_NOTE_LETTERS} letters, received ${Math.max(note.length, message.length)}.` };
  }
  if (noteAsks !== null && note.length < LEAST_NOTE_LETTERS) return { problem: `${noteAsks} A note is kept with this.` };
  if (action === 'messaged' && message.length < LEAST_NOTE_LETTERS) return { problem: 'What does the patient read? The message is empty.' };
  const leavesOpen = action === 'askClinician';
  if (asksDryness && !leavesOpen && entered.dryness === null) return { problem: 'It looks dry: do you agree? An answer is needed, for it ends the reminders.' };
  const dryness = asksDryness && !leavesOpen ? entered.dryness : null;
  return { kept: { action, reason: [said, note].filter(Boolean).join(' '), message: action === 'messaged' ? message : null, dryness, leavesOpen } };
}
