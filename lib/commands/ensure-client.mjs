/**
 * The database client is written by Prisma from prisma/schema.prisma and is in no repository: it is made where it is
 * missing or older than the schema. Plain JavaScript, for it runs before anything is compiled.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const ROOT = path.resolve(import.meta.dirname, '..', '..');
const CLIENT = path.join(ROOT, 'lib', 'edges', 'db', 'generated');
/** Says for which schema, and which Prisma, the client was made. */
const STAMP = path.join(CLIENT, 'made-for');

function wantedStamp() {
  const schema = readFileSync(path.join(ROOT, 'prisma', 'schema.prisma'));
  const { version } = JSON.parse(readFileSync(path.join(ROOT, 'node_modules', 'prisma', 'package.json'), 'utf8'));
  return `${version} ${createHash('sha256').update(schema).digest('hex')}`;
}

/** Makes the client if it is not the one for this schema; ends the program where that fails. */
export function ensureClient() {
  const wanted = wantedStamp();
  if (existsSync(STAMP) && readFileSync(STAMP, 'utf8') === wanted) return;
  const prisma = path.join(ROOT, 'node_modules', 'prisma', 'build', 'index.js');
  const config = path.join('prisma', 'prisma.config.ts');
  const made = spawnSync(process.execPath, [prisma, 'generate', '--config', config, '--no-hints'], { cwd: ROOT, encoding: 'utf8' });
  if (made.status !== 0) {
    console.error(`The database client could not be made from prisma/schema.prisma:\n${made.stdout}${made.stderr}`);
    process.exit(made.status ?? 1);
  }
  writeFileSync(STAMP, wanted);
}

if (process.argv[1] === import.meta.filename) ensureClient();
