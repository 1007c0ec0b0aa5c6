/** `npx tsx tests/golden/write-golden-figures.ts`, after METHOD_VERSION was raised and DEVELOPERS.md says what moved. */
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { goldenFigures } from './golden-figures';

await writeFile(path.join(import.meta.dirname, 'golden-figures.json'), `${JSON.stringify(await goldenFigures(), null, 1)}\n`);
