import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { sentencesEn } from '../../../apps/api/src/features/exchange/problems/sentences.en.js';
import { catalogues, problemPage } from '../../../apps/api/src/problem-page.js';

const source = path.resolve(import.meta.dirname, '../../../apps/api/src');

it('lists every catalogue of the sources', () => {
  const files = readdirSync(source, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.problems.ts'));
  expect(catalogues.map((catalogue) => catalogue.file).sort()).toEqual(files.map((file) => file.replaceAll(path.sep, '/')).sort());
});

it('uses each code once over all catalogues, in capitals', () => {
  const codes = [
    ...catalogues.flatMap((catalogue) => Object.values(catalogue.problems).map((make) => make.code)),
    ...Object.keys(sentencesEn),
  ];
  expect(codes.filter((code, index) => codes.indexOf(code) !== index)).toEqual([]);
  for (const code of codes) expect(code).toMatch(/^[A-Z][A-Z0-9_]+$/);
});

it('answers with a status of refusal or fault, and says when each is met', () => {
  for (const { problems } of catalogues)
    for (const make of Object.values(problems)) expect(make.status, make.code).toBeGreaterThanOrEqual(400);
  const rows = problemPage(source)
    .split('\n')
    .filter((line) => /^\| `\w+` \| \d{3} \|/.test(line));
  expect(rows).toHaveLength(catalogues.flatMap((catalogue) => Object.keys(catalogue.problems)).length);
  for (const row of rows) expect(row).toMatch(/^\| `\w+` \| \d{3} \| \S.*\. \| \S.*[.}] \|$/);
});

it('is the page in docs/problems.md', () => {
  expect(readFileSync(path.resolve(source, '../../../docs/problems.md'), 'utf8')).toBe(problemPage(source));
});
