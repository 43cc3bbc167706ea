import path from 'node:path';
import { ESLint } from 'eslint';
import { beforeAll, expect, it } from 'vitest';

const top = path.resolve(import.meta.dirname, '../..');

/** A breach of one rule: where it stands, what is written, and the rule and words that answer. */
interface Breach {
  readonly at: string;
  readonly code: string;
  readonly rule: string;
  readonly says: RegExp;
}

const lines = (count: number, line: (n: number) => string): string => Array.from({ length: count }, (_, n) => line(n)).join('\n');
const decorators = "import { Query, Resolver, Get, Controller, OneToMany, Field } from 'somewhere';\n";
const API = 'apps/api/src/features/portfolio/clients';

const breaches: readonly Breach[] = [
  { at: `${API}/long.ts`, code: lines(301, (n) => `const v${n} = ${n};`), rule: 'max-lines', says: /too many lines \(301\)/ },
  {
    at: `${API}/long.ts`,
    code: `export function long(): void {\n${lines(61, (n) => `  console.log(${n});`)}\n}`,
    rule: 'max-lines-per-function',
    says: /too many lines/,
  },
  {
    at: 'libs/metering/src/balance.kernel.ts',
    code: `/** Runs. */\nexport function long(): void {\n${lines(151, (n) => `  run(${n});`)}\n}`,
    rule: 'max-lines-per-function',
    says: /too many lines/,
  },
  {
    at: `${API}/deep.ts`,
    code: 'export function deep(a: number): void { if (a) { if (a) { if (a) { if (a) { console.log(a); } } } } }',
    rule: 'max-depth',
    says: /nested too deeply/,
  },
  {
    at: `${API}/complex.ts`,
    code: `export function complex(a: number): number { ${lines(10, (n) => `if (a === ${n}) return ${n};`)} return 0; }`,
    rule: 'complexity',
    says: /complexity of 11/,
  },
  {
    at: `${API}/many.ts`,
    code: 'export const many = (a: number, b: number, c: number, d: number, e: number, f: number): number => a + b + c + d + e + f;',
    rule: '@typescript-eslint/max-params',
    says: /too many parameters/,
  },
  {
    at: `${API}/types.ts`,
    code: "import { Row } from './row.js';\nexport const of = (row: Row): Row => row;",
    rule: '@typescript-eslint/consistent-type-imports',
    says: /only used as types/,
  },
  { at: `${API}/default.ts`, code: 'export default function thing(): void {}', rule: 'no-restricted-exports', says: /default/ },
  { at: `${API}/barrel.ts`, code: "export * from './client.type.js';", rule: 'no-restricted-syntax', says: /No barrels/ },
  {
    at: 'apps/web/src/features/findings/asks.ts',
    code: "import { graphql } from '../../graphql/__generated__/index.js';\ngraphql('query');",
    rule: 'no-restricted-imports',
    says: /Import graphql from gql\.js/,
  },
  { at: 'tests/api/some.spec.ts', code: "it.only('does', () => undefined);", rule: 'no-restricted-syntax', says: /run or removed/ },
  { at: 'tests/web/some.spec.tsx', code: "describe.skip('it', () => undefined);", rule: 'no-restricted-syntax', says: /run or removed/ },
  { at: 'tests/api/some.spec.ts', code: lines(501, (n) => `const v${n} = ${n};`), rule: 'max-lines', says: /too many lines \(501\)/ },
  { at: `${API}/utils.ts`, code: 'export const a = 1;', rule: 'house/telling-name', says: /"utils\.ts" says nothing/ },
  { at: 'tests/support/helpers/a.ts', code: 'export const a = 1;', rule: 'house/telling-name', says: /"helpers" says nothing/ },
  {
    at: `${API}/client.entity.ts`,
    code: `${decorators}class Row { @OneToMany(() => Row) rows: Row[]; }`,
    rule: 'no-restricted-syntax',
    says: /Rows point up only/,
  },
  {
    at: `${API}/client.entity.ts`,
    code: `${decorators}class Row { @Field() name: string; }`,
    rule: 'no-restricted-syntax',
    says: /A row is not a GraphQL type/,
  },
  {
    at: `${API}/client.entity.ts`,
    code: "import { ManyToOne } from 'typeorm';\nclass Row { @ManyToOne(() => Row, { eager: true }) row: Row; }",
    rule: 'no-restricted-syntax',
    says: /No eager relations/,
  },
  {
    at: `${API}/client.resolver.ts`,
    code: `${decorators}@Resolver() class R { @Query(() => String) all(): string { return ''; } }`,
    rule: 'house/named-permission',
    says: /@Query without @Allow/,
  },
  {
    at: `${API}/client.controller.ts`,
    code: `${decorators}@Controller() class C { @Get() all(): string { return ''; } }`,
    rule: 'house/named-permission',
    says: /@Get without @Allow/,
  },
  {
    at: `${API}/client.repository.ts`,
    code: `export const clients = {\n${lines(11, (n) => `  q${n}() { return ${n}; },`)}\n};`,
    rule: 'house/few-methods',
    says: /answers 11 questions/,
  },
  {
    at: `${API}/client.repository.ts`,
    code: `export class Clients {\n${lines(11, (n) => `  q${n}() { return ${n}; }`)}\n}`,
    rule: 'house/few-methods',
    says: /answers 11 questions/,
  },
  {
    at: `${API}/client.repository.ts`,
    code: 'export const set = (tx: Tx) => tx.query("set app.organization_id = \'x\'");',
    rule: 'no-restricted-syntax',
    says: /No SET/,
  },
  {
    at: 'apps/api/src/platform/a.ts',
    code: 'export const set = (tx: Tx, id: string) => tx.query(`SET LOCAL app.organization_id = ${id}`);',
    rule: 'no-restricted-syntax',
    says: /No SET/,
  },
  {
    at: 'apps/api/src/platform/a.ts',
    code: "export const set = (tx: Tx) => tx.query(`select set_config('app.organization_id', $1, false)`);",
    rule: 'no-restricted-syntax',
    says: /No SET/,
  },
  {
    at: `${API}/client.repository.ts`,
    code: "export const all = (source: DataSource) => source.query('select 1');",
    rule: 'no-restricted-syntax',
    says: /inside its organization transaction only/,
  },
  {
    at: `${API}/client.service.ts`,
    code: 'export class A { constructor(private readonly dataSource: S) {} run() { return this.dataSource.createQueryRunner(); } }',
    rule: 'no-restricted-syntax',
    says: /inside its organization transaction only/,
  },
  {
    at: `${API}/client.repository.ts`,
    code: "import pg from 'pg';\nexport const client = new pg.Client();",
    rule: 'no-restricted-syntax',
    says: /inside its organization transaction only/,
  },
  {
    at: 'apps/web/src/features/overview/Row.tsx',
    code: "export const style = { color: '#0b5c7a' };",
    rule: 'no-restricted-syntax',
    says: /No literal colours/,
  },
  {
    at: 'apps/web/src/features/overview/Row.tsx',
    code: 'export const style = { color: `rgb(1 2 ${three})` };',
    rule: 'no-restricted-syntax',
    says: /No literal colours/,
  },
  {
    at: 'apps/web/src/features/overview/Row.tsx',
    code: "import { useState } from 'react';\nexport function Row({ a }: { a: boolean }) { if (a) useState(1); return null; }",
    rule: 'react-hooks/rules-of-hooks',
    says: /called conditionally/,
  },
  {
    at: 'apps/web/src/features/overview/Row.tsx',
    code: "import { useEffect } from 'react';\nexport function Row({ a }: { a: number }) { useEffect(() => console.log(a), []); return null; }",
    rule: 'react-hooks/exhaustive-deps',
    says: /missing dependency/,
  },
  {
    at: 'libs/metering/src/a.ts',
    code: 'export function a(b: number): number { return b; }',
    rule: 'jsdoc/require-jsdoc',
    says: /Missing JSDoc/,
  },
  {
    at: 'libs/metering/src/a.ts',
    code: '/**\n * A.\n *\n * @returns B. [mm]\n */\nexport function a(b: number): number { return b; }',
    rule: 'jsdoc/require-param',
    says: /@param "b"/,
  },
  {
    at: 'libs/metering/src/a.ts',
    code: '/**\n * A.\n *\n * @param b - B. [mm]\n */\nexport function a(b: number): number { return b; }',
    rule: 'jsdoc/require-returns',
    says: /@returns/,
  },
  {
    at: 'libs/metering/src/a.ts',
    code: '/**\n * A.\n *\n * @param c - B. [mm]\n * @returns B. [mm]\n */\nexport function a(b: number): number { return b; }',
    rule: 'jsdoc/check-param-names',
    says: /"b"/,
  },
  {
    at: 'libs/metering/src/a.ts',
    code: '/**\n * A.\n *\n * @colour red\n */\nexport const a = 1;',
    rule: 'jsdoc/check-tag-names',
    says: /colour/,
  },
  {
    at: 'libs/metering/src/a.ts',
    code: '/**\n * A.\n *\n * @param b - Without its unit.\n * @returns B. [mm]\n */\nexport function a(b: number): number { return b; }',
    rule: 'jsdoc/match-description',
    says: /JSDoc description/,
  },
  { at: 'libs/metering/src/a.ts', code: 'const a = Math.random();', rule: 'no-restricted-properties', says: /random source/ },
  { at: 'libs/metering/src/a.ts', code: 'const a = Date.now();', rule: 'no-restricted-properties', says: /instant/ },
  { at: 'libs/metering/src/a.ts', code: 'const a = new Date();', rule: 'no-restricted-syntax', says: /instant/ },
  { at: 'libs/metering/src/a.ts', code: "const a = () => { throw new Error('no'); };", rule: 'no-restricted-syntax', says: /DomainError/ },
  {
    at: 'libs/metering/src/a.ts',
    code: lines(6, (n) => `export const a${n} = ${n};`),
    rule: 'house/few-exports',
    says: /exports 6 values/,
  },
];

/** What looks like a breach and is none. */
const allowed: readonly Omit<Breach, 'says'>[] = [
  {
    at: `${API}/client.resolver.ts`,
    code: "import { Query } from 'somewhere';\nclass R { @Allow(1) @Query(() => String) all(): string { return ''; } @Public('why') @Query(() => String) one(): string { return ''; } }",
    rule: 'house/named-permission',
  },
  { at: 'libs/showing/src/colours/paper-colours.ts', code: "export const ink = '#1b1f1d';", rule: 'no-restricted-syntax' },
  { at: 'apps/web/src/features/overview/Row.tsx', code: "export const to = '#main';", rule: 'no-restricted-syntax' },
  {
    at: `${API}/client.repository.ts`,
    code: 'export const all = (tx: Tx) => tx.query(`update client set name = $1`);',
    rule: 'no-restricted-syntax',
  },
  {
    at: 'apps/api/src/platform/a.ts',
    code: "export const set = (tx: Tx) => tx.query(`select set_config('app.organization_id', $1, true)`);",
    rule: 'no-restricted-syntax',
  },
  { at: 'libs/metering/src/a.ts', code: lines(9, (n) => `export interface A${n} { a: number }`), rule: 'house/few-exports' },
  { at: 'libs/units/src/length.ts', code: lines(9, (n) => `export const a${n} = ${n};`), rule: 'house/few-exports' },
  {
    at: 'libs/metering/src/balance.kernel.ts',
    code: `/** Runs. */\nexport function long(): void {\n${lines(120, (n) => `  run(${n});`)}\n}`,
    rule: 'max-lines-per-function',
  },
];

let eslint: ESLint;

beforeAll(() => {
  eslint = new ESLint({ cwd: top });
});

async function answers({ at, code, rule }: Omit<Breach, 'says'>): Promise<string[]> {
  const [result] = await eslint.lintText(code, { filePath: path.join(top, at) });
  expect(
    result!.messages.filter((message) => message.fatal),
    `${at} parses`,
  ).toEqual([]);
  return result!.messages.filter((message) => message.ruleId === rule).map((message) => message.message);
}

it.each(breaches.map((breach) => [breach.rule, breach.says.source, breach] as const))('%s answers a breach: %s', async (_, __, breach) => {
  const found = await answers(breach);
  expect(found).not.toEqual([]);
  expect(found[0]).toMatch(breach.says);
});

it.each(allowed.map((one) => [one.rule, one.at, one] as const))('%s lets pass what is no breach, in %s', async (_, __, one) => {
  expect(await answers(one)).toEqual([]);
});

it('every rule of the configuration has its breach here', async () => {
  const places = [
    'libs/metering/src/a.ts',
    `${API}/client.entity.ts`,
    `${API}/client.resolver.ts`,
    `${API}/client.repository.ts`,
    'apps/web/src/features/overview/Row.tsx',
    'tests/api/some.spec.ts',
  ];
  const configured = new Set<string>();
  for (const place of places) {
    const { rules } = (await eslint.calculateConfigForFile(path.join(top, place))) as { rules: Record<string, [number]> };
    for (const [rule, [severity]] of Object.entries(rules)) if (severity > 0) configured.add(rule);
  }
  const tried = new Set(breaches.map((breach) => breach.rule));
  expect([...configured].filter((rule) => !tried.has(rule))).toEqual([]);
});
