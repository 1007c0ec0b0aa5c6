import ts from 'typescript';
import { parseCode } from './parse-code';

export interface ExportedName {
  readonly name: string;
  readonly isFunction: boolean;
  /** The statement that carries the docblock. */
  readonly node: ts.Node;
}

const isExported = (node: ts.Node): boolean =>
  ts.canHaveModifiers(node) && (ts.getModifiers(node) ?? []).some((word) => word.kind === ts.SyntaxKind.ExportKeyword);

function namesOf(statement: ts.Statement): ExportedName[] {
  if (ts.isVariableStatement(statement)) {
    return statement.declarationList.declarations.map((declared) => {
      const made = declared.initializer;
      const isFunction = made !== undefined && (ts.isArrowFunction(made) || ts.isFunctionExpression(made));
      return { name: declared.name.getText(), isFunction, node: statement };
    });
  }
  const isFunction = ts.isFunctionDeclaration(statement) || ts.isClassDeclaration(statement);
  const isType = ts.isInterfaceDeclaration(statement) || ts.isTypeAliasDeclaration(statement) || ts.isEnumDeclaration(statement);
  if (!isFunction && !isType) return [];
  return [{ name: statement.name?.text ?? 'default', isFunction, node: statement }];
}

/**
 * What a module exports under a name of its own. Classes count as functions.
 * @example exportedCode('a.ts', 'export const one = () => 1;')[0].name // 'one'
 */
export function exportedCode(file: string, text: string): ExportedName[] {
  return parseCode(file, text).statements.filter(isExported).flatMap(namesOf);
}
