/** The list of who did what speaks in words. */
import { describe, expect, it } from 'vitest';
import { ACCESS_TABLE, ACTIONS } from '../../lib/access/access-table';
import { AUDIT_ACTIONS } from '../../lib/care/audit-actions';
import { LIMIT_IDS } from '../../lib/decide/rule-book';
import { RESOLUTION_ACTIONS } from '../../lib/review/constants';
import { DRAWN_OUTLINES } from '../../lib/segment/edge-cost';
import { allowedWords, auditWords } from '../../lib/server/audit-words';

const NOBODY = new Map<string, string>();
/** `episode.read`, `takeOver`: a dot or a capital inside a word. */
const CODE = /\w\.\w|[a-z][A-Z]/;

describe('what was done', () => {
  it.each(AUDIT_ACTIONS)('%s has words', (action) => {
    const words = auditWords(action, NOBODY);
    expect(words).toMatch(/^[A-Z][a-z]+ [a-z]/);
    expect(words).not.toMatch(CODE);
  });

  it('has words of its own for each', () => {
    expect(new Set(AUDIT_ACTIONS.map((action) => auditWords(action, NOBODY))).size).toBe(AUDIT_ACTIONS.length);
  });

  it.each([
    ...RESOLUTION_ACTIONS.map((one) => `review.resolve ${one}`),
    ...DRAWN_OUTLINES.map((one) => `outline.redraw ${one}`),
    ...LIMIT_IDS.map((one) => `rules.change ${one}`),
  ])('%s says what it was about', (note) => {
    const [action, about] = auditWords(note, NOBODY).split(/: (.*)/);
    expect(action).not.toMatch(CODE);
    expect(about).not.toMatch(CODE);
    const code = note.split(' ')[1];
    // One code is a plain word itself.
    expect(about !== code || code === 'called').toBe(true);
  });

  it('names staff by their names and several limits one after the other', () => {
    expect(auditWords('people.role nurse s1', new Map([['s1', 'Ada Bell']]))).toBe('Gave somebody another role: nurse; Ada Bell');
    expect(auditWords('rules.change fever.celsius numb.hours', NOBODY)).toBe('Changed the rule book: Fever: from this temperature on; Toe still numb so long after the anaesthetic');
  });

  it('is left as it is where an older program has noted what is no longer known', () => {
    expect(auditWords('toString', NOBODY)).toBe('toString');
    expect(auditWords('gone.by x', NOBODY)).toBe('gone.by: x');
  });
});

describe('what allowed it', () => {
  it.each(ACTIONS)('%s has words', (action) => {
    const row = ACCESS_TABLE.find((one) => one.action === action);
    const words = allowedWords(`${row?.role} may ${action} (${row?.scope})`);
    expect(words).toMatch(/^[a-z]+ may [a-z]+ [a-z]/);
    expect(words).not.toMatch(CODE);
  });

  it('is left as it is where it is no row of the table', () => {
    expect(allowedWords('nurse may fly.away (any)')).toBe('nurse may fly.away (any)');
    expect(allowedWords('started from the command line')).toBe('started from the command line');
  });
});
