import { changeRuleBook, DEFAULT_RULE_BOOK, type RuleBook } from '../decide/rule-book';

/**
 * The rule book as it was when a finding was made, from the version that is kept with the finding.
 *
 * @param version the book's name and each limit that the clinic had changed
 * @returns the defaults where the version names a limit that is no longer known
 * @example bookOfVersion('2026.3 with reachModerate.mm=18').limits['reachModerate.mm'] // 18
 */
export function bookOfVersion(version: string): RuleBook {
  const pairs = version.split(' ').filter((word) => word.includes('=')).map((word) => word.split('='));
  const changed = changeRuleBook(Object.fromEntries(pairs.map(([id, value]) => [id, Number(value)])));
  return 'book' in changed ? changed.book : DEFAULT_RULE_BOOK;
}
