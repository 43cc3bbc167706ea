import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';

/** What the sources of the api say in details of problems: texts as they are written, with {} where a value stands. */
export interface SaidInSources {
  readonly expected: ReadonlySet<string>;
  readonly fields: ReadonlySet<string>;
  readonly things: ReadonlySet<string>;
}

const source = path.resolve(import.meta.dirname, '../../apps/api/src');
/** Functions of the sources that refuse a value: the last argument is what was expected, the first of several the field. */
const REFUSE = /^(refuse|refused)$/;

/** The texts that an expression can be. */
function textsOf(node: ts.Expression | undefined): string[] {
  if (!node) return [];
  if (ts.isStringLiteralLike(node)) return [node.text];
  if (ts.isTemplateExpression(node)) return [node.head.text + node.templateSpans.map(({ literal }) => `{}${literal.text}`).join('')];
  if (ts.isConditionalExpression(node)) return [...textsOf(node.whenTrue), ...textsOf(node.whenFalse)];
  if (ts.isParenthesizedExpression(node)) return textsOf(node.expression);
  return [];
}

const isOf = (type: ts.TypeNode | undefined, name: string): boolean => type?.getText() === name;

/** Everything that problems of the api say of fields, expectations and things, gathered from its sources. */
export function saidInSources(): SaidInSources {
  const said = { expected: new Set<string>(), fields: new Set<string>(), things: new Set<string>() };
  const keep = (into: Set<string>, texts: readonly string[]): void => {
    for (const text of texts) into.add(text);
  };
  const ofProperty = (name: string, value: ts.Expression): void => {
    if (name === 'expected') keep(said.expected, textsOf(value));
    if (name === 'field') keep(said.fields, textsOf(value));
    if (name === 'thing') keep(said.things, textsOf(value));
  };
  const ofCall = ({ expression, arguments: given }: ts.CallExpression): void => {
    if (REFUSE.test(expression.getText()) && given.length !== 0) {
      keep(said.expected, textsOf(given.at(-1)));
      if (given.length === 3) keep(said.fields, textsOf(given[0]));
    }
    if (expression.getText() === 'judgeOrder') {
      keep(said.fields, textsOf(given[0]));
      keep(said.expected, textsOf(given[3]));
    }
    if (expression.getText() === 'between' && given[2])
      keep(
        said.expected,
        textsOf(given[2]).map((unit) => `{} ${unit}`),
      );
  };
  /** A rule answers with what it expected: every text in it is one. */
  const everyText = (node: ts.Node): void => {
    if (ts.isConditionalExpression(node) || ts.isReturnStatement(node) || ts.isArrowFunction(node)) {
      const answers = ts.isConditionalExpression(node)
        ? [node.whenTrue, node.whenFalse]
        : [ts.isReturnStatement(node) ? node.expression : node.body];
      for (const answer of answers) if (answer && !ts.isBlock(answer)) keep(said.expected, textsOf(answer as ts.Expression));
    }
    ts.forEachChild(node, everyText);
  };
  const walk = (node: ts.Node): void => {
    if (ts.isPropertyAssignment(node)) ofProperty(node.name.getText(), node.initializer);
    if (ts.isCallExpression(node)) ofCall(node);
    if (ts.isVariableDeclaration(node)) {
      if (node.name.getText() === 'expected' && node.initializer) keep(said.expected, textsOf(node.initializer));
      if (isOf(node.type, 'Rule') && node.initializer) everyText(node.initializer);
    }
    if (ts.isArrowFunction(node) && isOf(node.type, 'Rule')) everyText(node.body);
    ts.forEachChild(node, walk);
  };
  for (const file of readdirSync(source, { recursive: true, encoding: 'utf8' })) {
    // What files that are imported say has its own two catalogues.
    if (!file.endsWith('.ts') || (file.includes('exchange') && !/meanings-in|accept-import/.test(file))) continue;
    const text = readFileSync(path.join(source, file), 'utf8');
    if (/valueRefused|judge|expected|notFound|thing:/.test(text)) walk(ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true));
  }
  return said;
}
