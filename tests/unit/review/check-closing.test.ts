import { expect, it } from 'vitest';
import { checkClosing } from '../../../lib/review/check-closing';

const open = ['spreading', 'dry'] as const;
const answers = open.map((rule) => ({ rule, step: 'settled' as const, note: ' seen at the visit ' }));

it('keeps a word on each open rule, in their order and without the spaces around it', () => {
  expect(checkClosing({ found: ' Groove closed. ', answers: [...answers].reverse() }, open, String)).toEqual({
    kept: { found: 'Groove closed.', answers: open.map((rule) => ({ rule, step: 'settled', note: 'seen at the visit' })) },
  });
});

it('keeps no word on what is not open', () => {
  expect(checkClosing({ found: 'Groove closed.', answers }, [], String)).toEqual({ kept: { found: 'Groove closed.', answers: [] } });
});

it.each([
  ['nothing was found', { found: ' ', answers }, 'What was found at the follow-up? It is kept with the case.'],
  ['one rule has no word', { found: 'dry', answers: answers.slice(1) }, '“spreading” is open: settled, or left open?'],
  ['a word is empty', { found: 'dry', answers: answers.map((one) => ({ ...one, note: ' ' })) }, '“spreading”: what settled it?'],
  ['nobody looks after what is left', { found: 'dry', answers: answers.map((one) => ({ ...one, step: 'leftOpen' as const, note: '' })) }, '“spreading”: what is left open, and who looks after it?'],
  ['a note is a novel', { found: 'a'.repeat(2001), answers }, 'A note has at most 2000 letters, received 2001.'],
])('says what is missing where %s', (_, entered, problem) => {
  expect(checkClosing(entered, open, String)).toEqual({ problem });
});
