/**
 * `lib` is pure except for its edges, what the server calls, and the command line: time, randomness and bytes are
 * arguments. And each effect has one owner.
 */
import { builtinModules } from 'node:module';
import ts from 'typescript';
import { eachNode, lineOf, parseCode } from './parse-code';
import { readImports } from './read-imports';

/** Packages that act on the world, and the one folder (or folders) that may import each. */
const OWNERS: readonly (readonly [packages: RegExp, owners: readonly string[]])[] = [
  [/^(sharp|@img\/|heic-|libheif|exifreader)/, ['lib/edges/decode/']],
  [/^(opencv|@techstark\/opencv)/, ['lib/edges/vision/']],
  [/^onnxruntime/, ['lib/edges/infer/']],
  [/^(@prisma\/|prisma$|prisma\/|better-sqlite3)/, ['lib/edges/db/', 'prisma/']],
  [/^(better-auth|@better-auth\/)/, ['lib/edges/session/']],
];

/** Never in a pure file, besides the owned packages and what comes with Node itself. */
const BANNED_PACKAGES = /^(next|react|react-dom|server-only|node:.*|@?playwright.*)(\/|$)/;

/** Names of the running program, the clock, chance and the outside. As a property (`port.fetch`) they are harmless. */
const BANNED_NAMES = new Set([
  'process',
  'fetch',
  'console',
  'performance',
  'crypto',
  'globalThis',
  'setTimeout',
  'setInterval',
  'setImmediate',
]);

const BANNED_TEXTS = new Set(['Date.now', 'Math.random', 'import.meta']);

/** Where effects may be: `isPure('lib/card/serial.ts')` is true, `isPure('lib/edges/env/settings.ts')` is false. */
export const isPure = (file: string): boolean => file.startsWith('lib/') && !/^lib\/(edges|server|commands)\//.test(file);

const isBuiltin = (specifier: string): boolean => builtinModules.includes(specifier.replace(/^node:/, ''));

/** Is this identifier a name in its own right, and not the property or the key of something? */
function standsAlone(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  return !(ts.isPropertyAssignment(parent) && parent.name === node) && !ts.isPropertySignature(parent);
}

/** What an impure node is called; null for a pure one. */
function impureName(node: ts.Node): string | null {
  if (ts.isIdentifier(node)) return BANNED_NAMES.has(node.text) && standsAlone(node) ? node.text : null;
  if (ts.isPropertyAccessExpression(node) || ts.isMetaProperty(node)) {
    return BANNED_TEXTS.has(node.getText()) ? node.getText() : null;
  }
  const makesDate = (ts.isNewExpression(node) || ts.isCallExpression(node)) && node.expression.getText() === 'Date';
  return makesDate && (ts.isCallExpression(node) || !node.arguments?.length) ? 'the clock (Date without arguments)' : null;
}

/**
 * What a pure file uses although it may not.
 * @example impurities('lib/card/a.ts', 'export const now = () => Date.now();') // ['lib/card/a.ts:1: Date.now']
 */
export function impurities(file: string, text: string): string[] {
  if (!isPure(file)) return [];
  const found = readImports(file, text)
    .filter((name) => BANNED_PACKAGES.test(name) || isBuiltin(name) || OWNERS.some(([owned]) => owned.test(name)))
    .map((name) => `${file}: imports ${name}`);
  eachNode(parseCode(file, text), (node) => {
    const name = impureName(node);
    if (name !== null) found.push(`${file}:${lineOf(node)}: ${name}`);
  });
  return found;
}

/**
 * Effects that a file uses although another folder owns them.
 * @example strayEffects('lib/edges/paper/a.ts', "import 'sharp'") // ['lib/edges/paper/a.ts: sharp belongs to lib/edges/decode/']
 */
export function strayEffects(file: string, text: string): string[] {
  if (!/^(lib|app)\//.test(file)) return [];
  const found = readImports(file, text).flatMap((name) => {
    const owner = OWNERS.find(([owned]) => owned.test(name))?.[1];
    return owner && !owner.some((folder) => file.startsWith(folder)) ? [`${file}: ${name} belongs to ${owner.join(', ')}`] : [];
  });
  if (/^lib\/(edges\/env|commands)\//.test(file) || !text.includes('process.')) return found;
  eachNode(parseCode(file, text), (node) => {
    const reads = ts.isPropertyAccessExpression(node) && /^process\.(env|argv)$/.test(node.getText());
    if (reads) found.push(`${file}:${lineOf(node)}: ${node.getText()} belongs to lib/edges/env/ and lib/commands/`);
  });
  return found;
}
