import ts from 'typescript';

/** The syntax tree of one file; its name says the language. `parseCode('a.ts', 'export const one = 1;')` */
export function parseCode(file: string, text: string): ts.SourceFile {
  return ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
}

/** Calls `visit` with every node below `node`, itself included. */
export function eachNode(node: ts.Node, visit: (node: ts.Node) => void): void {
  visit(node);
  node.forEachChild((child) => eachNode(child, visit));
}

/** Where a node stands, as an editor counts. `lineOf(node)` is 1 at the top. */
export const lineOf = (node: ts.Node): number =>
  node.getSourceFile().getLineAndCharacterOfPosition(node.getStart()).line + 1;
