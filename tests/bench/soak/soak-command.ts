import { writeFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { runSoak } from './run-soak';

const PHOTOS = 300;

/** Memory of a process that analyses 300 photos in a row. `npm run bench -- soak [--photos N] [--json FILE]` */
export async function soakCommand(words: readonly string[]): Promise<void> {
  const { values } = parseArgs({ args: [...words], options: { json: { type: 'string' }, photos: { type: 'string' } } });
  const soak = await runSoak(Number(values.photos ?? PHOTOS));
  console.log(`${soak.photos} photos in a row: ${soak.warmMb.toFixed(0)} MB after 20, ${soak.lateMb.toFixed(0)} MB in the last third (× ${soak.growth.toFixed(3)})`);
  if (values.json) await writeFile(values.json, `${JSON.stringify(soak, null, 1)}\n`);
}
