/** The words and numbers of the review list: what a level is called, and what may be done with a case. */
import type { Level, RuleId } from '../decide/finding';

/** Worst first. A level is said in words before it is drawn. */
export const LEVEL_WORDS: Readonly<Record<Level, string>> = {
  now: 'Now',
  today: 'Today',
  soon: 'Next working day',
  visit: 'At the follow-up',
  retake: 'New photo needed',
};

/** A newest photo that could not be measured is no finding of the rule book; it has a place on the list all the same. */
export const PHOTO_NOT_MEASURED = 'photo-not-measured';
export type ReviewRule = RuleId | typeof PHOTO_NOT_MEASURED;

/** What a person may do with a case. */
export const RESOLUTION_ACTIONS = ['called', 'messaged', 'bringInToday', 'askClinician', 'nothingNeeded'] as const;
export type ResolutionAction = (typeof RESOLUTION_ACTIONS)[number];

interface ActionWords {
  readonly words: string;
  /** Stands for the reason where a note may be left out. */
  readonly said: string;
  /** What has to be written down; null where a note may be left out. */
  readonly noteAsks: string | null;
}

export const ACTION_WORDS: Readonly<Record<ResolutionAction, ActionWords>> = {
  called: { words: 'Called', said: 'Called the patient.', noteAsks: null },
  messaged: { words: 'Message sent', said: 'Sent a message.', noteAsks: null },
  bringInToday: { words: 'Bring in today', said: 'Asked to come in today.', noteAsks: null },
  askClinician: { words: 'Ask clinician', said: 'Asked the clinician.', noteAsks: 'What is the clinician asked?' },
  nothingNeeded: { words: 'Nothing needed', said: '', noteAsks: 'Why is nothing needed?' },
};

/** A note or a message is a few sentences. Ours. */
export const MOST_NOTE_LETTERS = 2000;
/** Shorter is no reason. Ours. */
export const LEAST_NOTE_LETTERS = 3;
/** A claim lapses so long after the last sign of life from whoever has the case open. Ours. */
export const CLAIM_MINUTES = 5;
/** The list shows so many cases and says how many more there are: the worst are in it. Ours. */
export const MOST_ROWS = 100;
