import { expect, it } from 'vitest';
import { closingLine } from '../../closing-line.mjs';

const report = { numPassedTests: 12, numFailedTests: 1, numPendingTests: 2, numTodoTests: 1 };

it('says on one plain line how many tests passed, failed and were skipped', () => {
  expect(closingLine({ ...report, testResults: [] })).toBe('12 passed, 1 failed, 3 skipped');
});

it('counts a file that broke before its first test as a failed test', () => {
  const testResults = [
    { status: 'failed', assertionResults: [] },
    { status: 'failed', assertionResults: [{}] },
    { status: 'passed', assertionResults: [] },
  ];
  expect(closingLine({ ...report, testResults })).toBe('12 passed, 2 failed, 3 skipped');
});
