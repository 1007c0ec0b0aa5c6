import { describe, expect, it } from 'vitest';
import { checkResolution, type EnteredResolution } from '../../../lib/review/check-resolution';
import { MOST_NOTE_LETTERS, RESOLUTION_ACTIONS } from '../../../lib/review/constants';

const entered = (more: Partial<EnteredResolution>): EnteredResolution => ({ action: 'called', note: '', message: null, dryness: null, ...more });
const kept = (more: Partial<EnteredResolution>, asksDryness = false) => {
  const checked = checkResolution(entered(more), asksDryness);
  if ('problem' in checked) throw new Error(checked.problem);
  return checked.kept;
};

describe('what a resolution must record', () => {
  it('is a reason, always: the action says it where no note has to', () => {
    expect(kept({}).reason).toBe('Called the patient.');
    expect(kept({ note: '  comes at three ' }).reason).toBe('Called the patient. comes at three');
    for (const action of RESOLUTION_ACTIONS) expect(kept({ action, note: 'looked at it', message: 'Please soak.' }).reason.length).toBeGreaterThan(3);
  });

  it.each(['nothingNeeded', 'askClinician'])('is a note for %s', (action) => {
    for (const note of ['', '   ', 'no']) expect(checkResolution(entered({ action, note }), false)).toHaveProperty('problem');
    expect(kept({ action, note: 'old bruise, seen on Monday' }).reason).toContain('old bruise');
  });

  it('is the message itself where one was sent, and no message otherwise', () => {
    expect(checkResolution(entered({ action: 'messaged', note: 'sent', message: ' ' }), false)).toHaveProperty('problem');
    expect(kept({ action: 'messaged', message: ' Please call us. ' }).message).toBe('Please call us.');
    expect(kept({ action: 'called', message: 'left over from before' }).message).toBeNull();
  });

  it('is a plain yes or no where the toe looks dry: an action alone is no agreement', () => {
    expect(checkResolution(entered({ note: 'called' }), true)).toHaveProperty('problem');
    expect(kept({ dryness: 'dismissed' }, true).dryness).toBe('dismissed');
    expect(kept({ dryness: 'confirmed' }, false).dryness).toBeNull();
    expect(kept({ action: 'askClinician', note: 'is it dry?' }, true)).toMatchObject({ dryness: null, leavesOpen: true });
  });

  it('is one of the known actions, within the length of a note', () => {
    expect(checkResolution(entered({ action: 'delete' }), false)).toEqual({ problem: 'There is no action “delete”.' });
    expect(checkResolution(entered({ note: 'x'.repeat(MOST_NOTE_LETTERS + 1) }), false)).toEqual({
      problem: `A note has at most ${MOST_NOTE_LETTERS} letters, received ${MOST_NOTE_LETTERS + 1}.`,
    });
  });

  it('leaves the case open only where somebody is still to answer', () => {
    const open = RESOLUTION_ACTIONS.filter((action) => kept({ action, note: 'a note', message: 'a message' }).leavesOpen);
    expect(open).toEqual(['askClinician']);
  });
});
