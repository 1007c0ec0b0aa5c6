import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { build, type Plugin, stop } from 'esbuild';

const ROOT = path.resolve(import.meta.dirname, '..', '..');
const BUILT = path.join(ROOT, 'out', 'built');

/** Weights, and the thread that reads HEIC, lie beside the source that asks for them: they are looked for there. */
const besideTheSource: Plugin = {
  name: 'beside-the-source',
  setup({ onLoad }) {
    onLoad({ filter: /\.ts$/ }, async ({ path: source }) => {
      const text = await readFile(source, 'utf8');
      if (!text.includes('import.meta.url')) return null;
      const place = path.relative(BUILT, source).split(path.sep).join('/');
      return { contents: text.replaceAll('import.meta.url', `new URL(${JSON.stringify(place)}, import.meta.url).href`), loader: 'ts' };
    });
  },
};

/**
 * One of our programs as one JavaScript file, packages left outside: read as TypeScript, every function is wrapped to
 * keep its name and the reader stays in memory (60 MB). Takes a quarter of a second.
 *
 * @param source the program's first file
 * @returns the built file: `node ${await buildProgram('lib/commands/worker-loop.ts')}`
 */
export async function buildProgram(source: string): Promise<string> {
  const built = path.join(BUILT, `${path.basename(source, '.ts')}.mjs`);
  const { outputFiles } = await build({
    entryPoints: [path.resolve(ROOT, source)],
    outfile: built,
    plugins: [besideTheSource],
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    target: `node${process.versions.node}`,
    write: false,
    logLevel: 'error',
  });
  await stop();
  await mkdir(BUILT, { recursive: true });
  // Two may build at the same time: neither ever sees half a file.
  const unfinished = `${built}.${process.pid}`;
  await writeFile(unfinished, outputFiles[0].contents);
  await rename(unfinished, built);
  return built;
}
