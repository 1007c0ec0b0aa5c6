/**
 * A worked example of a docblock: `@example lineLengthMm([…]) // 5`. It can be run where every name in it is exported
 * by exactly one pure module or comes with the language, and where what stands behind `//` is a value.
 */
import ts from 'typescript';
import { eachNode, parseCode } from './parse-code';

export interface WorkedExample {
  /** Left of `//`. */
  readonly expression: string;
  /** Right of `//`; null where the example only shows a call. */
  readonly expected: string | null;
}

/** Splits at the last ` // ` outside a text: addresses in texts contain `//` without spaces. */
export function readExample(shown: string): WorkedExample {
  const line = shown.split('\n')[0].replace(/^`|`$/g, '');
  const at = line.lastIndexOf(' // ');
  return at < 0 ? { expression: line, expected: null } : { expression: line.slice(0, at).trim(), expected: line.slice(at + 4).trim() };
}

/** The only expression of a text, or null where it is something else (a statement, words). */
export function onlyExpression(text: string): ts.Expression | null {
  const source = parseCode('example.ts', `(${text});`);
  const broken = (source as unknown as { parseDiagnostics: unknown[] }).parseDiagnostics.length > 0;
  const [statement, ...others] = source.statements;
  if (broken || others.length > 0 || !statement || !ts.isExpressionStatement(statement)) return null;
  return ts.isParenthesizedExpression(statement.expression) ? statement.expression.expression : null;
}

/** Is this identifier looked up, rather than a property, a key or a parameter's own name? */
function isLookedUp(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  return !(ts.isPropertyAssignment(parent) && parent.name === node) && !ts.isParameter(parent) && !ts.isTypeReferenceNode(parent);
}

/** Names an expression takes from outside itself. `freeNames(onlyExpression('f((a) => a, B)'))` is ['f', 'B']. */
export function freeNames(expression: ts.Expression): string[] {
  const own = new Set<string>();
  const used = new Set<string>();
  eachNode(expression, (node) => {
    if (ts.isParameter(node)) own.add(node.name.getText());
    if (ts.isIdentifier(node) && isLookedUp(node)) used.add(node.text);
  });
  return [...used].filter((name) => !own.has(name));
}

/** Half a unit in the last printed place; a whole number is meant exactly, to rounding error. */
function toleranceOf(printed: string, value: number): number {
  const [mantissa, exponent = '0'] = printed.toLowerCase().split('e');
  const decimals = mantissa.split('.')[1]?.length ?? 0;
  const rounding = 1e-9 * Math.max(1, Math.abs(value));
  return decimals === 0 ? rounding : 0.5 * 10 ** (Number(exponent) - decimals) + rounding;
}

/** A printed number with its sign, or null. */
function printedNumber(node: ts.Expression): string | null {
  if (ts.isNumericLiteral(node)) return node.getText();
  const negative = ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.MinusToken;
  return negative && ts.isNumericLiteral(node.operand) ? `-${node.operand.getText()}` : null;
}

const WORD_VALUES = new Map<string, unknown>([
  ['true', true],
  ['false', false],
  ['null', null],
  ['undefined', undefined],
  ['NaN', NaN],
  ['Infinity', Infinity],
  ['-Infinity', -Infinity],
]);

/** Is this printed thing a value, all the way down? */
export function isValue(node: ts.Expression): boolean {
  if (printedNumber(node) !== null || ts.isStringLiteralLike(node) || WORD_VALUES.has(node.getText())) return true;
  if (ts.isArrayLiteralExpression(node)) return node.elements.every(isValue);
  return ts.isObjectLiteralExpression(node) && node.properties.every((one) => ts.isPropertyAssignment(one) && isValue(one.initializer));
}

/** Does a computed value agree with a printed one, numbers to the places printed? Typed arrays count as arrays. */
export function agrees(actual: unknown, node: ts.Expression): boolean {
  const printed = printedNumber(node);
  if (printed !== null) {
    const value = Number(printed.replaceAll('_', ''));
    return typeof actual === 'number' && Math.abs(actual - value) <= toleranceOf(printed, value);
  }
  if (ts.isStringLiteralLike(node)) return actual === node.text;
  if (ts.isArrayLiteralExpression(node)) {
    const list = ArrayBuffer.isView(actual) || Array.isArray(actual) ? Array.from(actual as unknown as ArrayLike<unknown>) : null;
    return list !== null && list.length === node.elements.length && node.elements.every((one, at) => agrees(list[at], one));
  }
  if (!ts.isObjectLiteralExpression(node)) return Object.is(actual, WORD_VALUES.get(node.getText()));
  if (typeof actual !== 'object' || actual === null) return false;
  const fields = node.properties.filter(ts.isPropertyAssignment).map((one) => [one.name.getText().replace(/['"]/g, ''), one.initializer] as const);
  const record = actual as Record<string, unknown>;
  return Object.keys(record).length === fields.length && fields.every(([name, value]) => agrees(record[name], value));
}
