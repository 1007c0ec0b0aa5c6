import type { StartBody } from '@/lib/care/start-contract';
import { localInstant } from '../../../(patient)/_queue/local-instant';

/** What stands in the form; '' and empty lists where nothing was chosen. */
export interface StartDraft {
  readonly at: string;
  readonly foot: string;
  readonly sides: readonly string[];
  readonly strip: string;
  readonly edge: string;
  readonly pus: string;
  readonly bone: string;
  readonly matrix: string;
  readonly block: string;
  readonly blockAt: string;
  readonly fails: string;
  readonly risks: readonly string[];
  readonly antibiotic: string;
  readonly antibioticAt: string;
  readonly language: string;
  readonly birthYear: string;
  readonly plan: string;
}

const MS_PER_MINUTE = 60_000;
const yesNo = (value: string): boolean | null => (value === '' ? null : value === 'yes');

/** What a `datetime-local` field shows, with this machine's offset: `2026-03-01T09:30` → `2026-03-01T09:30:00+01:00`. */
export const instantOf = (local: string): string => localInstant(new Date(local).getTime());

function blockAt({ at, block, blockAt }: StartDraft): string | null {
  if (block === '' || block === 'none') return null;
  if (block === 'other') return blockAt === '' ? null : instantOf(blockAt);
  return localInstant(new Date(at).getTime() - Number(block) * MS_PER_MINUTE);
}

function antibioticAt({ at, antibiotic, antibioticAt }: StartDraft): string | null {
  if (antibiotic === 'now') return instantOf(at);
  return antibiotic === 'other' && antibioticAt !== '' ? instantOf(antibioticAt) : null;
}

/** What has to be chosen and is not, in words; null where nothing is missing. The server looks at the rest. */
export function missingIn({ at, sides, matrix, plan, block, blockAt, antibiotic, antibioticAt }: StartDraft): string | null {
  if (sides.length === 0) return 'Which side was treated? Choose one or both.';
  if (matrix === '') return 'Was the matrix treated? Choose one.';
  if (at === '') return 'When was the procedure? Enter the time.';
  if (block === 'other' && blockAt === '') return 'When was the anaesthetic given? Enter the time.';
  if (antibiotic === 'other' && antibioticAt === '') return 'When was the antibiotic started? Enter the time.';
  return plan === '' ? 'Which plan does the patient get? Choose one.' : null;
}

/** The body that is sent; the server checks every word of it. */
export function startBody(id: string, draft: StartDraft) {
  const { at, foot, sides, strip, edge, pus, bone, matrix, fails, risks, language, birthYear, plan } = draft;
  return {
    id,
    procedure: {
      at: instantOf(at),
      matricectomy: matrix,
      treatedSides: sides,
      stripMm: strip === '' ? null : Number(strip.replace(',', '.')),
      ...(edge === '' ? {} : { edge }),
      pusSeen: yesNo(pus),
      boneFelt: yesNo(bone),
      anaestheticAt: blockAt(draft),
      foot: foot || null,
      ifItFails: fails || null,
    },
    risks,
    antibioticStartedAt: antibioticAt(draft),
    language,
    birthYear: birthYear.trim() === '' ? null : Number(birthYear),
    planTemplateId: plan,
  } satisfies { [Key in keyof StartBody]: unknown };
}
