import ts from 'typescript';
import { exportedCode } from './exported-code';
import { isPure } from './purity-rule';

/** The docblock right before a statement, as text without its stars; empty where there is none. */
function descriptionOf(node: ts.Node): string {
  const blocks = ts.getJSDocCommentsAndTags(node).filter(ts.isJSDoc);
  return ts.getTextOfJSDocComment(blocks.at(-1)?.comment) ?? '';
}

/** Texts of the `@example` tags of a statement. */
export function exampleTexts(node: ts.Node): string[] {
  return ts
    .getJSDocTags(node)
    .filter((tag) => tag.tagName.text === 'example')
    .map((tag) => ts.getTextOfJSDocComment(tag.comment)?.trim() ?? '');
}

/**
 * Exported functions of a pure file that do not say what they do in a sentence, or show no worked example.
 * @example docblockBreaches('lib/a/one.ts', 'export const one = () => 1;') // ['lib/a/one.ts: one has no sentence', …]
 */
export function docblockBreaches(file: string, text: string): string[] {
  if (!isPure(file)) return [];
  return exportedCode(file, text)
    .filter(({ isFunction }) => isFunction)
    .flatMap(({ name, node }) => {
      const sentence = /\p{L}{2}.*[.?!:](\s|$)/su.test(descriptionOf(node));
      const example = exampleTexts(node).some((shown) => shown !== '');
      return [
        ...(sentence ? [] : [`${file}: ${name} has no sentence`]),
        ...(example ? [] : [`${file}: ${name} has no @example`]),
      ];
    });
}
