/** Every route the program answers, read from its source, and the guarded function behind each. */
import ts from 'typescript';
import { exportedCode } from '../architecture/exported-code';
import { eachNode, parseCode } from '../architecture/parse-code';
import { codeFiles, readText } from '../architecture/source-tree';

const METHODS = ['GET', 'HEAD', 'POST', 'PUT', 'PATCH', 'DELETE', 'OPTIONS'];

export interface RouteHandler {
  readonly file: string;
  readonly method: string;
  /** Names of `load…` and `command…` functions that the handler calls. */
  readonly calls: readonly string[];
  readonly served: boolean;
}

function callsIn(node: ts.Node): string[] {
  const calls: string[] = [];
  eachNode(node, (one) => {
    if (ts.isCallExpression(one) && ts.isIdentifier(one.expression)) calls.push(one.expression.text);
  });
  return calls;
}

/** The handlers that one route file exports. */
export function handlersOf(file: string, text: string): RouteHandler[] {
  return exportedCode(file, text)
    .filter(({ name }) => METHODS.includes(name))
    .map(({ name, node }) => {
      const calls = callsIn(node);
      return { file, method: name, calls: calls.filter((call) => /^(load|command)[A-Z]/.test(call)), served: calls.includes('serve') };
    });
}

export const allHandlers = (): RouteHandler[] =>
  codeFiles('app')
    .filter((file) => /\/route\.tsx?$/.test(file))
    .flatMap((file) => handlersOf(file, readText(file)));

/** Does the exported function ask the guard before it answers or changes anything? */
export function asksGuardFirst(file: string, text: string): boolean {
  const [made] = exportedCode(file, text).filter(({ name, isFunction }) => isFunction && /^(load|command)[A-Z]/.test(name));
  const calls = made ? callsIn(parseCode(file, made.node.getText())) : [];
  const [guard, refuses] = [calls.indexOf('guard'), calls.indexOf('refusedBy')];
  // Before it only what the guard needs to know: whose episode it is about.
  return guard >= 0 && refuses > guard && calls.slice(0, guard).every((call) => ['store', 'ownEpisode'].includes(call) || /^find[A-Z]/.test(call));
}
