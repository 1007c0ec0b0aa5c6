/** `npm run -s assess -- EPISODE.json`: from an episode to a trend and findings. */
import { createReadStream } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createInterface } from 'node:readline';
import { text } from 'node:stream/consumers';
import { z } from 'zod';
import { episodeSchema } from '../care/episode';
import { parseEpisode } from '../care/parse-episode';
import { writeWholeFile } from '../edges/paper/write-whole-file';
import { type Assessment, assessEpisode } from '../pipeline/assess-episode';
import { ASSESS_USAGE, type AssessArguments, readAssessArguments } from './assess-arguments';
import { assessSummary } from './assess-summary';
import { CAUTION } from './caution';

const UNREADABLE = 2;

/** A sentence for the person at the terminal; everything else that is thrown is a bug. */
class WrongUse extends Error {}

async function main(words: readonly string[]): Promise<number> {
  const args = readAssessArguments(words);
  if (args === 'help') {
    process.stdout.write(ASSESS_USAGE);
    return 0;
  }
  if ('problem' in args) throw new WrongUse(`${args.problem} Try --help.`);
  if (args.schema) {
    await write(args.json ?? '-', JSON.stringify(z.toJSONSchema(episodeSchema, { io: 'input' }), null, 1));
    return 0;
  }
  if (args.lines) return assessLines(args);
  const answer = assessText(await readWhole(args.episode ?? '-'));
  if ('problem' in answer) throw new WrongUse(answer.problem);
  if (args.json) await write(args.json, JSON.stringify(answer, null, 1));
  if (args.json !== '-') process.stdout.write(`${assessSummary(answer)}\n${CAUTION}\n`);
  return 0;
}

function assessText(json: string): Assessment | { readonly problem: string } {
  let data: unknown;
  try {
    data = JSON.parse(json);
  } catch (error) {
    return { problem: `This is no JSON: ${(error as Error).message.replace(/\s+/g, ' ').replace(/\.?$/, '.')}` };
  }
  const parsed = parseEpisode(data);
  return 'problem' in parsed ? parsed : assessEpisode(parsed.episode);
}

/** Every line is answered in its own place; one that is refused doesn't keep the others from being judged. */
async function assessLines({ episode, json }: AssessArguments): Promise<number> {
  const answers: string[] = [];
  let refused = 0;
  const toFile = json !== null && json !== '-';
  for await (const line of linesOf(episode ?? '-')) {
    if (line.trim() === '') continue;
    const answer = assessText(line);
    if ('problem' in answer) refused++;
    answers.push(JSON.stringify(answer));
    if (!toFile && answers.length >= LINES_AT_ONCE) await print(answers.splice(0));
  }
  if (toFile) await write(json, answers.join('\n'));
  else await print(answers);
  if (refused > 0) process.stderr.write(`${refused} episodes could not be read; each has its reason in its line.\n`);
  return refused > 0 ? UNREADABLE : 0;
}

const LINES_AT_ONCE = 64;

/** Waits where the reader is slower, so that memory stays small. */
async function print(lines: readonly string[]): Promise<void> {
  if (lines.length === 0) return;
  await new Promise<void>((done) => process.stdout.write(`${lines.join('\n')}\n`, () => done()));
}

async function* linesOf(file: string): AsyncGenerator<string> {
  const input = file === '-' ? process.stdin : createReadStream(file, 'utf8');
  try {
    for await (const line of createInterface({ input, crlfDelay: Infinity })) yield line;
  } catch {
    throw new WrongUse(`The file ${file} cannot be read.`);
  }
}

async function readWhole(file: string): Promise<string> {
  if (file === '-') return text(process.stdin);
  return readFile(file, 'utf8').catch(() => {
    throw new WrongUse(`The file ${file} cannot be read.`);
  });
}

async function write(file: string, content: string): Promise<void> {
  if (file === '-') {
    await print([content]);
    return;
  }
  await writeWholeFile(file, `${content}\n`).catch((error: NodeJS.ErrnoException) => {
    throw new WrongUse(`Cannot write ${file} (${error.code ?? error.message}): name a file in a folder that is there.`);
  });
}

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    if (!(error instanceof WrongUse)) throw error;
    process.stderr.write(`${error.message}\n`);
    process.exitCode = UNREADABLE;
  },
);
