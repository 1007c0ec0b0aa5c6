/**
 * The counts of a run on one plain line. A test file that broke before its first test counts as one failed test: it
 * must not vanish from the counts.
 * @param report as vitest's json reporter writes it; its shape stands in closing-line.d.mts
 */
export function closingLine(report) {
  const broken = report.testResults.filter((file) => file.status === 'failed' && file.assertionResults.length === 0).length;
  const skipped = report.numPendingTests + report.numTodoTests;
  return `${report.numPassedTests} passed, ${report.numFailedTests + broken} failed, ${skipped} skipped`;
}
