/** One vocabulary, no junk drawers, and each file named after what it exports. */
import path from 'node:path';
import ts from 'typescript';
import { exportedCode } from './exported-code';
import { eachNode, lineOf, parseCode } from './parse-code';

/** Names that tools or readers insist on. */
const GIVEN_NAMES = /^(README|DEVELOPERS|SECURITY|CHANGELOG|LICENSE|Dockerfile|[a-z-]+\.config|package(-lock)?|tsconfig|MANIFEST)$/;
const KEBAB = /^[a-z0-9]+(-[a-z0-9]+)*$/;
/** Python imports a module by its file name, so a module of several words needs this. */
const SNAKE = /^_*[a-z0-9]+(_[a-z0-9]+)*_*$/;
/** Folders of the router: `(staff)`, `[id]`, `_components`. */
const ROUTE_FOLDER = /^(\([a-z-]+\)|\[{1,2}(\.\.\.)?[a-z-]+\]{1,2}|_[a-z-]+)$/i;
/** `common-truth` is a truth; `card-common` and `common` are drawers. */
const JUNK = /(^|[-_])(utils?|helpers?)($|[-_])|(^|[-_])(common|misc|stuff)$/;

/** A name without its endings: `serial` for `serial.test.ts`. Dot files stay whole. */
const stemOf = (name: string): string => (name.startsWith('.') ? name : name.replace(/(\.(test|spec|config|d|bench|module))?\.[a-z0-9]+$/i, ''));

/**
 * What is wrong with the path of one file, or null.
 * @example pathBreach('lib/card/utils.ts') // 'lib/card/utils.ts: "utils" says nothing'
 */
export function pathBreach(file: string): string | null {
  const folders = file.split('/');
  const name = folders.pop() ?? '';
  const stem = stemOf(name);
  if (/^index\.[cm]?[jt]sx?$/.test(name)) return `${file}: no index files`;
  const junk = [...folders, stem].find((part) => JUNK.test(part.toLowerCase()));
  if (junk !== undefined) return `${file}: "${junk}" says nothing`;
  const bad = folders.filter((part) => !KEBAB.test(part) && !ROUTE_FOLDER.test(part) && !part.startsWith('.'));
  const stamped = file.startsWith('prisma/migrations/');
  if (bad.length > 0 && !stamped) return `${file}: folder "${bad[0]}" is not kebab-case`;
  const isModule = name.endsWith('.py') && SNAKE.test(stem);
  const fits = isModule || KEBAB.test(stem) || GIVEN_NAMES.test(stem) || name.startsWith('.') || stamped;
  return fits ? null : `${file}: "${stem}" is not kebab-case`;
}

/** Letters and digits only: `convex-hull`, `convexHull` and `CONVEX_HULL` are one name. */
const bare = (name: string): string => name.replace(/[^a-z0-9]/gi, '').toLowerCase();

/** The words that everything else speaks: a small vocabulary each, not one thing. */
const VOCABULARIES = ['lib/units.ts', 'lib/result.ts'];

/**
 * Does a module with functions export something named after its file? A unit or a verb may be added:
 * `line-length.ts` may export `lineLengthMm`, `inside-outline.ts` may export `isInsideOutline`; the file may say it in
 * the plural. Tables, constants and types have no such name.
 * @returns what is wrong, or null
 * @example exportBreach('lib/rectify/fit-line.ts', 'export const fitLine = () => 1;') // null
 */
export function exportBreach(file: string, text: string): string | null {
  const exported = exportedCode(file, text);
  if (VOCABULARIES.includes(file) || !exported.some(({ isFunction }) => isFunction)) return null;
  const wanted = bare(path.posix.basename(file).replace(/\.\w+$/, '')).replace(/s$/, '');
  if (exported.some(({ name }) => bare(name).includes(wanted))) return null;
  return `${file}: none of ${exported.map(({ name }) => name).join(', ')} is named after the file`;
}

const BRANDS = /\b(Px|Mm|Mm2|DeltaE|Days)\b/;

/**
 * Places outside `lib/units.ts` that turn something into a branded unit by assertion.
 * @example mintedBrands('lib/card/a.ts', 'const wide = 3 as Mm;') // ['lib/card/a.ts:1: 3 as Mm']
 */
export function mintedBrands(file: string, text: string): string[] {
  const found: string[] = [];
  if (file === 'lib/units.ts') return found;
  eachNode(parseCode(file, text), (node) => {
    const asserts = ts.isAsExpression(node) || ts.isTypeAssertionExpression(node);
    if (asserts && BRANDS.test(node.type.getText())) found.push(`${file}:${lineOf(node)}: ${node.getText()}`);
  });
  return found;
}
