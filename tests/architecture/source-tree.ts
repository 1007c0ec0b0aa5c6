/** The files of the repository, as the rules read them: from the disk, so that a file counts before it is committed. */
import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';

export const ROOT = path.resolve(import.meta.dirname, '..', '..');

/** Made by tools and never committed. */
const NOT_OURS = new Set(['.git', '.next', '.scratch', '__pycache__', 'generated', 'node_modules', 'out']);

/** Every file below `folder`, relative to the root and with forward slashes. `treeFiles('lib')` */
export function treeFiles(folder = ''): string[] {
  return readdirSync(path.join(ROOT, folder), { withFileTypes: true })
    .filter((entry) => !NOT_OURS.has(entry.name))
    .flatMap((entry) => {
      const file = path.posix.join(folder, entry.name);
      return entry.isDirectory() ? treeFiles(file) : [file];
    })
    .sort();
}

/** The code below `folder` in the languages the compiler reads, declarations aside. `codeFiles('lib')` */
export const codeFiles = (folder = ''): string[] =>
  treeFiles(folder).filter((file) => /\.(ts|tsx|mjs|js)$/.test(file) && !file.endsWith('.d.ts'));

/** The text of one file of the tree. `readText('package.json')` */
export const readText = (file: string): string => readFileSync(path.join(ROOT, file), 'utf8');
