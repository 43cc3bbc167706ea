import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { DomainError } from '@rillbook/units/domain-error.js';
import fc from 'fast-check';
import type ts from 'typescript';
import { expect, it } from 'vitest';

/** Required, not imported: its nine megabytes are not read through for names that it exports. */
const compiler = createRequire(import.meta.url)('typescript') as typeof ts;

const root = path.resolve(import.meta.dirname, '../..');
const filesOf = (library: string) =>
  readdirSync(path.join(root, 'libs', library, 'src'), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => path.join('libs', library, 'src', file));

/**
 * Rooms whose functions are steps of one computation, never called with what people wrote, and so hot that they do not ask again: loops over
 * columns, the search for programs, the judges of evidence.
 */
const STEPS = /\.kernel\.ts$|\/(series|columns|planning|detection)\//;

/** Functions that only put a number in its place, as it is. */
const AS_IT_IS = ['exactly', 'nothingMissing', 'kernelDays'];

/** Numbers that no measurement gives, and some that every one does. */
const ANY_NUMBER = fc.constantFrom(Number.NaN, Infinity, -Infinity, -1e9, -40, -1, 0, 1e-9, 0.15, 0.5, 1, 7, 45, 400, 1e9);

// What could be given for a parameter of this type; null where it is more than numbers.
function givenFor(type: ts.TypeNode | undefined, file: ts.SourceFile): fc.Arbitrary<unknown> | null {
  if (!type) return null;
  const text = type.getText().replace(/^readonly /, '');
  if (/^(number|Quantity<'[^']*'>)$/.test(text)) return ANY_NUMBER;
  if (/^\(?(number|Quantity<'[^']*'>)( \| null\))?\[\]$/.test(text))
    return fc.array(text.includes('null') ? fc.option(ANY_NUMBER) : ANY_NUMBER, { maxLength: 5 });
  const members = membersOf(text, file);
  if (!members) return null;
  const given = members.map((member) => [member.name.getText(), givenFor(member.type, file)] as const);
  return given.every(([, each]) => each) ? fc.record(Object.fromEntries(given as [string, fc.Arbitrary<unknown>][])) : null;
}

function membersOf(name: string, file: ts.SourceFile): readonly ts.PropertySignature[] | null {
  const declared = file.statements.find(
    (each): each is ts.InterfaceDeclaration | ts.TypeAliasDeclaration =>
      (compiler.isInterfaceDeclaration(each) || compiler.isTypeAliasDeclaration(each)) && each.name.text === name,
  );
  const members =
    declared &&
    (compiler.isInterfaceDeclaration(declared)
      ? declared.members
      : compiler.isTypeLiteralNode(declared.type)
        ? declared.type.members
        : null);
  return members?.every(compiler.isPropertySignature) ? [...members] : null;
}

type Offered = {
  readonly where: string;
  readonly name: string;
  readonly given: fc.Arbitrary<unknown[]>;
};

function offeredBy(library: string): readonly Offered[] {
  return filesOf(library).flatMap((where) => {
    if (STEPS.test(where)) return [];
    const file = compiler.createSourceFile(where, readFileSync(path.join(root, where), 'utf8'), compiler.ScriptTarget.Latest, true);
    return file.statements.flatMap((each): Offered[] => {
      if (!compiler.isFunctionDeclaration(each) || !each.name || AS_IT_IS.includes(each.name.text)) return [];
      const isExported = each.modifiers?.some(({ kind }) => kind === compiler.SyntaxKind.ExportKeyword);
      const given = each.parameters.map(({ type }) => givenFor(type, file));
      if (!isExported || given.length === 0 || !given.every((one) => one !== null)) return [];
      return [{ where, name: each.name.text, given: fc.tuple(...given) as fc.Arbitrary<unknown[]> }];
    });
  });
}

// Where in a result a number stands that is none.
function noNumbers(result: unknown, at = 'result'): readonly string[] {
  if (typeof result === 'number') return Number.isFinite(result) ? [] : [`${at} is ${result}`];
  if (result === null || typeof result !== 'object') return [];
  return Object.entries(result).flatMap(([key, value]) => noNumbers(value, `${at}.${key}`));
}

function answer(call: () => unknown): readonly string[] {
  try {
    return noNumbers(call());
  } catch (error) {
    return error instanceof DomainError ? [] : [`throws ${String(error)}`];
  }
}

/**
 * Makes the tests of a library's functions that take nothing but numbers.
 *
 * @param library - Its name.
 * @param atLeast - How many there are at least.
 */
export function holdNumbers(library: string, atLeast: number): void {
  const all = offeredBy(library);

  it('finds the functions that take nothing but numbers', () => {
    expect(all.length).toBeGreaterThanOrEqual(atLeast);
  });

  it.each(all)('$name of $where gives numbers, or says why it does not', async ({ where, name, given }) => {
    const loaded = (await import(path.join(root, where))) as Record<string, (...values: unknown[]) => unknown>;
    const called = loaded[name]!;
    fc.assert(
      fc.property(given, (values) => {
        expect(answer(() => called(...values))).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });
}
