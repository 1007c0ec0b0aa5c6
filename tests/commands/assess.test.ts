import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { episodeJson, photo } from '../unit/decide/invented-course';

const ROOT = path.resolve(import.meta.dirname, '..', '..');
const COMMAND = path.join(ROOT, 'lib', 'commands', 'assess.ts');
const scratch = mkdtempSync(path.join(os.tmpdir(), 'foldwatch-assess-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

function assess(words: readonly string[], input = ''): Promise<Ran> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, ['--import', 'tsx', COMMAND, ...words], { cwd: ROOT });
    let [out, err] = ['', ''];
    child.stdout.on('data', (part: Buffer) => (out += part.toString()));
    child.stderr.on('data', (part: Buffer) => (err += part.toString()));
    child.on('close', (code) => resolve({ code, out, err }));
    child.stdin.end(input);
  });
}

const EPISODE = episodeJson([
  { hours: 50, answers: { pain: 2 }, photo: photo({ reach: 3 }) },
  { hours: 74, answers: { dischargeColour: 'green', dischargeConsistency: 'creamy' }, photo: photo({ reach: 6 }) },
]);
const file = path.join(scratch, 'episode.json');
writeFileSync(file, JSON.stringify(EPISODE));

describe('one episode', () => {
  it('is judged from a file: findings and trend as JSON, nothing else on the way', async () => {
    const { code, out, err } = await assess([file, '--json', '-']);
    expect([code, err]).toEqual([0, '']);
    const answer = JSON.parse(out);
    expect(answer.findings.map(({ rule, level }: { rule: string; level: string }) => [rule, level])).toContainEqual(['purulent', 'today']);
    expect(answer.findings[0]).toMatchObject({ ruleBookVersion: '2026.3', evidence: { photos: expect.any(Array) } });
    expect(answer.trend.series.reach.points.map(({ value }: { value: number }) => value)).toEqual([3, 6]);
  });

  it('is judged from standard input, as a summary for people', async () => {
    const { code, out } = await assess(['-'], JSON.stringify(EPISODE));
    expect(code).toBe(0);
    expect(out).toMatch(/^soon|today +.*purulent/m);
    expect(out).toMatch(/not a diagnosis/);
  });

  it('is written whole to a file', async () => {
    const target = path.join(scratch, 'answer.json');
    expect((await assess([file, '--json', target])).code).toBe(0);
    expect(JSON.parse(readFileSync(target, 'utf8')).trend).toBeDefined();
  });
});

describe('many episodes', () => {
  it('are answered line by line; one that is refused has its reason in its place', async () => {
    const line = JSON.stringify({ ...EPISODE, id: 'a' });
    const { code, out } = await assess(['--lines'], `${line}\n{"x":1}\nno json\n${line}\n`);
    const answers = out.trim().split('\n').map((one) => JSON.parse(one));
    expect(code).toBe(2);
    expect(answers.map((one) => one.id ?? typeof one.problem)).toEqual(['a', 'string', 'string', 'a']);
  });

  it('are read from a file too', async () => {
    const lines = path.join(scratch, 'many.jsonl');
    writeFileSync(lines, `${JSON.stringify(EPISODE)}\n`.repeat(150));
    const { code, out } = await assess([lines, '--lines']);
    expect([code, out.trim().split('\n').length]).toEqual([0, 150]);
  });
});

describe('the schema', () => {
  it('is a JSON schema that names every part of the contract', async () => {
    const { code, out } = await assess(['--schema']);
    expect(code).toBe(0);
    const { properties } = JSON.parse(out);
    expect(Object.keys(properties)).toEqual(expect.arrayContaining(['procedure', 'risks', 'plan', 'antibioticStartedAt', 'now', 'checkIns', 'resolutions', 'closedAt']));
    expect(Object.keys(properties.checkIns.items.properties.answers.properties)).toContain('painOutOfProportion');
  });
});

describe('wrong use', () => {
  const broken = path.join(scratch, 'broken.json');
  writeFileSync(broken, '{"procedure":');
  const hot = path.join(scratch, 'hot.json');
  writeFileSync(hot, JSON.stringify({ ...EPISODE, checkIns: [{ at: EPISODE.now, answers: { feverC: 99 } }] }));

  it.each([
    ['no episode', [], /No episode was named/],
    ['a file that is not there', ['nowhere.json'], /cannot be read/],
    ['no JSON', [broken], /no JSON/],
    ['a temperature in Fahrenheit', [hot], /Fahrenheit\?/],
    ['an unknown option', [file, '--fast'], /--fast/],
    ['a result in a folder that is not there', [file, '--json', path.join(scratch, 'none', 'x.json')], /Cannot write/],
    ['lines from a file that is not there', ['nowhere.jsonl', '--lines'], /cannot be read/],
  ])('%s: one sentence, exit 2, no stack', async (_, words, message) => {
    const { code, out, err } = await assess(words);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(message);
    expect(err.trim().split('\n')).toHaveLength(1);
  });

  it('leaves no result behind when the episode is refused', async () => {
    const target = path.join(scratch, 'never.json');
    expect((await assess([hot, '--json', target])).code).toBe(2);
    expect(existsSync(target)).toBe(false);
  });
});
