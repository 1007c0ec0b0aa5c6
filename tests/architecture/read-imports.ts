import ts from 'typescript';
import { eachNode, parseCode } from './parse-code';

/** What a call such as `import('x')`, `require('x')` or `new URL('x', import.meta.url)` names; null for other nodes. */
function calledFor(node: ts.Node): ts.Node | null {
  if (ts.isCallExpression(node)) {
    const callee = node.expression;
    const dynamic = callee.kind === ts.SyntaxKind.ImportKeyword;
    const named = /^(require|require\.resolve|import\.meta\.resolve)$/.test(callee.getText());
    return dynamic || named ? (node.arguments[0] ?? null) : null;
  }
  const besideThisFile = ts.isNewExpression(node) && node.expression.getText() === 'URL' && node.arguments?.length === 2;
  return besideThisFile ? node.arguments[0] : null;
}

/**
 * Every module that a file names, however it does so: import, import type, export from, import(), typeof import(),
 * require() and new URL('./worker', import.meta.url).
 * @example readImports('a.ts', "export * from './b'") // ['./b']
 */
export function readImports(file: string, text: string): string[] {
  const found: string[] = [];
  eachNode(parseCode(file, text), (node) => {
    let named: ts.Node | null | undefined = null;
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) named = node.moduleSpecifier;
    else if (ts.isExternalModuleReference(node)) named = node.expression;
    else if (ts.isImportTypeNode(node)) named = ts.isLiteralTypeNode(node.argument) ? node.argument.literal : null;
    else named = calledFor(node);
    if (named && ts.isStringLiteralLike(named)) found.push(named.text);
  });
  return found;
}
