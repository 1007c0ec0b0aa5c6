/** What photos show, what people said and what was decided is only ever added to. */
import { describe, expect, it } from 'vitest';
import { codeFiles, readText } from '../../architecture/source-tree';

const EVIDENCE = ['checkIn', 'photo', 'analysis', 'outlineVersion', 'assessment', 'finding', 'resolution', 'closing', 'message', 'auditEvent', 'ruleBookVersion'];

/** Places that change or remove rows of evidence, by the client or by SQL. */
function changesOf(file: string, text: string): string[] {
  const models = EVIDENCE.join('|');
  const byClient = new RegExp(`\\.(${models})\\s*\\.\\s*(update|updateMany|updateManyAndReturn|upsert|delete|deleteMany)\\b`, 'g');
  const bySql = new RegExp(`\\b(UPDATE|DELETE\\s+FROM|REPLACE\\s+INTO|DROP\\s+TABLE)\\s+["'\`]?(${models})\\b`, 'gi');
  return [byClient, bySql].flatMap((words) => [...text.matchAll(words)].map(([found]) => `${file}: ${found}`));
}

describe('the rule that evidence is only added to', () => {
  it.each([
    'await queries.photo.update({ where })',
    'database.finding.deleteMany({})',
    'tx.analysis\n  .upsert({})',
    "executeScript('DELETE FROM \"AuditEvent\"')",
    'UPDATE Resolution SET reason = 1',
  ])('catches %s', (planted) => {
    expect(changesOf('planted.ts', planted)).toHaveLength(1);
  });

  it.each(['queries.photo.create({ data })', 'queries.job.updateMany({})', 'database.episode.update({})'])('lets be %s', (planted) => {
    expect(changesOf('planted.ts', planted)).toEqual([]);
  });
});

it('is kept by the whole program', () => {
  expect(codeFiles().filter((file) => /^(lib|app|prisma)\//.test(file)).flatMap((file) => changesOf(file, readText(file)))).toEqual([]);
});
