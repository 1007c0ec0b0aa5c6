/**
 * Words that have no place in the repository: talk of the workplace and of how the project came about, places on one
 * machine, and, in what a person reads, anything that reassures.
 */
import ts from 'typescript';
import { eachNode, lineOf, parseCode } from './parse-code';

interface Ban {
  readonly why: string;
  readonly words: RegExp;
}

/** Not the word "session" itself: people sign in, so there will be sessions. Only somebody's working hours are meant. */
const WORKPLACE: readonly Ban[] = [
  { why: 'issue number', words: /(?<![\w&#])#\d{1,2}(?![\w-])|\b(issue|ticket|PR|pull request|milestone)s? #?\d+\b/i },
  { why: 'working hours', words: /\b(work(ing)?|coding|developer|previous|earlier|later|last|next|my|our) sessions?\b/i },
  { why: 'workplace role', words: /\b(sub-?agents?|(coding|AI|LLM|other|another|review) agents?|other helpers?|helper[- ](one|two|three|\d|session|agent)s?)\b/i },
  { why: 'workplace role', words: /\b(the lead|tech lead|team lead|CEO|orchestrator|work order)\b/i },
  { why: 'assistant', words: /\b(claude|anthropic|chatgpt|copilot|openai|language model|prompt engineering)\b/i },
  { why: 'place on one machine', words: /(?<![\w.)\]}*])\/(work|tmp|root|home)\/[\w.]/ },
  { why: 'registry host', words: /\b(registry\.npmjs|npmjs\.(org|com)|deb\.debian|security\.debian|pypi\.org|pythonhosted)/i },
  { why: 'how the project came about', words: /\bpodiatrist['’]s (talk|video|lecture|presentation)\b/i },
];

/** Folders in which "session" is the web's word, in every phrase. */
const WEB_SESSIONS = /^(lib\/(edges\/session|server|access)|app|tests\/(access|browser|journey))\//;

/** In sentences for people. The tool measures and says what it found; that all is well is never its to say. */
const REASSURANCE: readonly Ban[] = [
  { why: 'reassures', words: /\b(normal|normally|fine|healthy|harmless|all well|all clear|all good|nothing wrong)\b/i },
  { why: 'reassures', words: /\b(healing|heals|going|looks?|looking|doing|progressing) (very |quite )?(well|nicely|good|great|okay|ok)\b/i },
  { why: 'reassures', words: /\bno (problems?|worr(y|ies)|infection|inflammation|cause for|need to (worry|see|call))\b/i },
  { why: 'reassures', words: /\b(do not|don['’]t|nothing to|need not) worry\b|\b(perfectly|completely) (safe|ok|okay)\b/i },
];

const said = (bans: readonly Ban[], text: string): string[] =>
  bans.flatMap(({ why, words }) => {
    const match = words.exec(text);
    return match === null ? [] : [`${why}: "${match[0]}"`];
  });

/** Every text of a tree that is ours to read; the lockfile and pictures are not. */
export const isOurText = (file: string): boolean =>
  /(\.(ts|tsx|mjs|js|py|md|json|sql|prisma|css|sh|yml|yaml|txt|html|example)|^LICENSE|^\.ci\/run|^\.gitignore|^\.npmrc)$/.test(file) &&
  file !== 'package-lock.json';

/**
 * Workplace words in one file, or in its name, each with its line.
 * @example workplaceWords('README.md', 'as the last session found') // ['README.md:1: working hours: "last session"']
 */
export function workplaceWords(file: string, text: string): string[] {
  const bans = WORKPLACE.filter(({ why }) => !(why === 'working hours' && WEB_SESSIONS.test(file)));
  const lines = text.split('\n').flatMap((line, at) => said(bans, line).map((what) => `${file}:${at + 1}: ${what}`));
  const name = said(bans, file.replace(/[-_/]/g, ' ')).map((what) => `${file}: ${what}`);
  return [...name, ...lines];
}

/** The written text of a node: a string, the fixed parts of a template, or what stands between tags. */
function writtenText(node: ts.Node): string | null {
  if (ts.isStringLiteralLike(node) || ts.isJsxText(node)) return node.text;
  return ts.isTemplateHead(node) || ts.isTemplateMiddle(node) || ts.isTemplateTail(node) ? node.text : null;
}

/**
 * Reassurance in the texts that a program can show. Of code, comments and names it says nothing.
 * @example reassurances('lib/a.ts', "const said = 'All is fine.';") // ['lib/a.ts:1: reassures: "fine"']
 */
export function reassurances(file: string, text: string): string[] {
  const found: string[] = [];
  eachNode(parseCode(file, text), (node) => {
    const written = writtenText(node);
    if (written === null || ts.isImportDeclaration(node.parent) || ts.isLiteralTypeNode(node.parent)) return;
    found.push(...said(REASSURANCE, written).map((what) => `${file}:${lineOf(node)}: ${what}`));
  });
  return found;
}
