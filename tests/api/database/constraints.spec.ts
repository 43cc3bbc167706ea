import { afterAll, beforeAll, expect, it } from 'vitest';
import { constraintProblem } from '../../../apps/api/src/platform/problems/constraint-problems.js';
import { checkSentence } from '../../../apps/api/src/platform/problems/constraint-sentences.js';
import { pointerInSpanish, ruleInSpanish } from '../../../apps/web/src/i18n/problems/spanish-rules.js';
import { startApp, type TestApp } from '../../support/test-app.js';

// SQLSTATE codes: PostgreSQL 18 manual, appendix A, class 23.
const CODES: Readonly<Record<string, string>> = { c: '23514', u: '23505', p: '23505', f: '23503', n: '23502' };

interface Constraint {
  readonly table: string;
  readonly name: string;
  readonly kind: string;
  readonly column: string | null;
}

let product: TestApp;
let constraints: Constraint[];

beforeAll(async () => {
  product = await startApp();
  constraints =
    await product.database.admin<Constraint>(`select conrelid::regclass::text as table, conname as name, contype as kind, (select attname from pg_attribute where attrelid = conrelid and attnum = conkey[1]) as column from pg_constraint where connamespace = 'public'::regnamespace and conrelid <> 'migrations'::regclass
    union all select indrelid::regclass::text, cls.relname, 'u', null from pg_index join pg_class cls on cls.oid = indexrelid where cls.relnamespace = 'public'::regnamespace and indisunique and not exists (select from pg_constraint where conindid = indexrelid)`);
});
afterAll(() => product.close());

/** The problem of a constraint, as the driver would report it. */
const problemOf = ({ table, name, kind, column }: Constraint) =>
  constraintProblem({ driverError: { code: CODES[kind], table, ...(kind === 'n' ? { column } : { constraint: name }) } });

it('every rule of the database answers with a code, its name and a sentence', () => {
  expect(constraints.length).toBeGreaterThan(300);
  for (const constraint of constraints) {
    const problem = problemOf(constraint);
    expect(problem, constraint.name).not.toBeNull();
    expect(problem!.code, constraint.name).toBe(constraint.kind === 'f' ? 'POINTS_NOWHERE' : 'RULE_BROKEN');
    expect(problem!.details['rule'], constraint.name).toBe(
      constraint.kind === 'n' ? `${constraint.table}_${constraint.column}_not_null` : constraint.name,
    );
    expect(problem!.message, constraint.name).toMatch(/^[A-Z].*\.$/);
    expect(problem!.message, constraint.name).not.toMatch(/_|undefined|null/);
  }
});

it('every rule of the database has its own sentence in Spanish', () => {
  const rules = constraints
    .map((constraint) => problemOf(constraint)!)
    .map(({ code, details }) => ({ code, rule: String(details['rule']) }));
  const says = rules.map(({ code, rule }) => ({ rule, says: code === 'POINTS_NOWHERE' ? pointerInSpanish(rule) : ruleInSpanish(rule) }));
  expect(says.filter((one) => one.says.startsWith('Un valor falta, ya existe')).map(({ rule }) => rule)).toEqual([]);
  expect(says.filter((one) => /_|undefined|null/.test(one.says))).toEqual([]);
});

it('every check is named after a rule that has its own sentence', () => {
  const unnamed = constraints.filter(({ kind, name, table }) => kind === 'c' && checkSentence(name, table) === null);
  expect(unnamed.map((one) => one.name)).toEqual([]);
});

it('says what is wrong with which value, over the wire', async () => {
  const owner = await product.somebody(await product.organization('Heron Grounds'), 'owner');
  await product.organization('Quail Grounds');
  const { errors } = await owner.send(
    'mutation { changeOrganization(version: 1, input: { name: "Quail Grounds", units: us, language: en, leastConfidence: 0.9, leastLitres: 1, leastMoney: 10 }) { id } }',
  );
  expect(errors.map(({ message, extensions }) => [extensions.code, extensions.details['rule'], message])).toEqual([
    ['RULE_BROKEN', 'organization_name_once', 'There is an organization of this name already. Choose another name.'],
  ]);
});
