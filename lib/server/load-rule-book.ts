import { DateTime } from 'luxon';
import type { Actor } from '../access/actor';
import { guard } from '../access/guard';
import { LIMITS, type LimitId } from '../decide/constants';
import { changeRuleBook, DEFAULT_RULE_BOOK, LIMIT_IDS } from '../decide/rule-book';
import { readClinicFacts } from '../edges/db/read-clinic-facts';
import { type RuleBookRow, ruleBooksOf } from '../edges/db/rule-books';
import { staffNames } from '../edges/db/staff-names';
import { type LessSensitive, limitWords } from '../report/limit-words';
import { type Answer, refusedBy } from './answer';
import { findOwnClinic } from './find-own-clinic';
import { sayWho } from './say-who';
import { store } from './store';

export interface RuleBookPage {
  readonly number: number;
  readonly version: string;
  readonly mayChange: boolean;
  readonly limits: readonly ShownLimit[];
  readonly versions: readonly ShownVersion[];
}

export interface ShownLimit {
  readonly id: string;
  readonly name: string;
  readonly unit: string;
  readonly value: number;
  readonly usual: number;
  readonly least: number;
  readonly most: number;
  readonly source: string;
  readonly less: LessSensitive;
}

export interface ShownVersion {
  readonly number: number;
  readonly at: string;
  readonly by: string;
  readonly reason: string;
  /** What was changed in it, with where each number comes from. */
  readonly changes: readonly string[];
}

/** The clinic's limits, where each comes from, and what was changed when, by whom and why. */
export async function loadRuleBook(actor: Actor): Promise<{ readonly page: RuleBookPage } | { readonly refused: Answer }> {
  const { database } = await store();
  const own = findOwnClinic(actor);
  const may = guard(actor, 'rules.read', own);
  if (!may.allowed || own === null) return { refused: may.allowed ? { status: 404 } : refusedBy(may) };
  const books = await ruleBooksOf(database, own.clinicId);
  const names = await staffNames(database, own.clinicId);
  const { timeZone } = await readClinicFacts(database, own.clinicId);
  const newest = books.at(0);
  const changed = changeRuleBook((newest?.limits ?? {}) as Record<string, number>);
  const book = 'book' in changed ? changed.book : DEFAULT_RULE_BOOK;
  return {
    page: {
      number: newest?.number ?? 0,
      version: book.version,
      mayChange: guard(actor, 'rules.change', own).allowed,
      limits: LIMIT_IDS.map((id) => shownLimit(id, book.limits[id], newest)),
      versions: books.map((one, at) => ({
        number: one.number,
        at: DateTime.fromJSDate(one.madeAt, { zone: timeZone }).toFormat('d LLL yyyy, HH:mm'),
        by: sayWho(one.madeBy, names),
        reason: one.reason,
        changes: changesOf(one, books.at(at + 1)),
      })),
    },
  };
}

function shownLimit(id: LimitId, value: number, newest: RuleBookRow | undefined): ShownLimit {
  const { value: usual, least, most, source } = LIMITS[id];
  const isOwn = newest?.limits[id] !== undefined;
  return { id, ...limitWords(id), value, usual, least, most, source: isOwn ? (newest.sources[id] ?? 'the clinic') : source };
}

function changesOf(one: RuleBookRow, before: RuleBookRow | undefined): string[] {
  const valueIn = (book: RuleBookRow | undefined, id: LimitId) => book?.limits[id] ?? LIMITS[id].value;
  return LIMIT_IDS.filter((id) => valueIn(one, id) !== valueIn(before, id)).map((id) => {
    const { name, unit } = limitWords(id);
    return `${name}: ${valueIn(before, id)} → ${valueIn(one, id)} ${unit} (${one.sources[id] ?? 'no source'})`;
  });
}
