import type { Finding } from '../decide/finding';

/** Why a photo by itself is put before a person. */
const SENTENCE = {
  held: 'The photo shows another card than the one given to this patient. It is held until somebody has looked whose toe it is.',
  unread: 'A file was sent that cannot be opened as a photo. It is kept as it came.',
  givenUp: 'Working on this photo failed several times. It is kept as it came.',
} as const;

/** A finding that rests on the file alone and on no limit of the rule book. */
export const askPerson = (why: keyof typeof SENTENCE, photo: { readonly id: string; readonly receivedAt: Date }): Finding => ({
  rule: 'cannot-judge',
  level: 'soon',
  at: photo.receivedAt.toISOString(),
  sentence: SENTENCE[why],
  evidence: { numbers: [], photos: [photo.id], checkIns: [] },
  ruleBookVersion: 'no rule',
  raisedForRisk: false,
  closed: null,
});
