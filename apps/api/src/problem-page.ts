import { readFileSync } from 'node:fs';
import path from 'node:path';
import { exchangeProblems } from './features/exchange/import/directory/exchange.problems.js';
import { sentencesEn } from './features/exchange/problems/sentences.en.js';
import { reportsProblems } from './features/reports/reports.problems.js';
import { fieldworkProblems } from './features/fieldwork/fieldwork.problems.js';
import { phonesProblems } from './features/phones/phones.problems.js';
import { accountsProblems } from './features/accounts/accounts.problems.js';
import { findingsProblems } from './features/findings/findings.problems.js';
import { filesProblems } from './platform/files/files.problems.js';
import { identityProblems } from './platform/identity/sessions/identity.problems.js';
import { platformProblems } from './platform/problems/platform.problems.js';
import type { ProblemMaker } from './platform/problems/problem.js';

/** One catalogue of faults: its file below src, and what it exports. */
export interface Catalogue {
  readonly file: string;
  readonly title: string;
  readonly problems: Readonly<Record<string, ProblemMaker<never>>>;
}

/** Every catalogue of the product; a test compares the list with the files. */
export const catalogues: readonly Catalogue[] = [
  { file: 'platform/problems/platform.problems.ts', title: 'Everywhere', problems: platformProblems },
  { file: 'platform/identity/sessions/identity.problems.ts', title: 'Signing in and members', problems: identityProblems },
  { file: 'platform/files/files.problems.ts', title: 'Pictures', problems: filesProblems },
  { file: 'features/accounts/accounts.problems.ts', title: 'Month accounts', problems: accountsProblems },
  { file: 'features/findings/findings.problems.ts', title: 'Findings', problems: findingsProblems },
  { file: 'features/fieldwork/fieldwork.problems.ts', title: 'Field work', problems: fieldworkProblems },
  { file: 'features/phones/phones.problems.ts', title: 'Phones', problems: phonesProblems },
  { file: 'features/reports/reports.problems.ts', title: 'Water reports', problems: reportsProblems },
  { file: 'features/exchange/import/directory/exchange.problems.ts', title: 'Import and export', problems: exchangeProblems },
];

/** Details that show their own names, so that a sentence reads as its template. */
const named = new Proxy({}, { get: (_, name) => `{${String(name)}}` });

/** When a problem is met: the comment above it in its catalogue. */
function meetings(source: string, file: string): ReadonlyMap<string, string> {
  const text = readFileSync(path.join(source, file), 'utf8');
  return new Map(
    [...text.matchAll(/\/\*\* ((?:(?!\*\/).)*) \*\/\s+\w+: problem\(\s*'(\w+)'/gs)].map(([, when, code]) => [code!, when!] as const),
  );
}

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('\n', ' ');

function section(catalogue: Catalogue, source: string): string {
  const met = meetings(source, catalogue.file);
  const rows = Object.values(catalogue.problems).map(
    (make) => `| \`${make.code}\` | ${make.status} | ${cell(met.get(make.code) ?? '')} | ${cell(make(named as never).message)} |`,
  );
  return [`## ${catalogue.title}`, '', '| code | status | when | sentence |', '|---|---|---|---|', ...rows, ''].join('\n');
}

/**
 * The page of all problems, printed from the catalogues.
 *
 * @param source the folder of the sources, for the comments that say when a problem is met
 */
export function problemPage(source: string): string {
  const head = [
    '# Problems',
    '',
    'Printed from the catalogues; change those, then print this page again: `node apps/api/dist/print-problems.js`.',
    '',
    'A fault of GraphQL carries its code in `extensions.code` and its details in `extensions.details`; a fault of HTTP carries both in its body. Words in braces are details.',
    '',
  ];
  const rows = Object.entries(sentencesEn).map(([code, sentence]) => `| \`${code}\` | ${cell(sentence)} |`);
  const files = [
    '## In an imported file',
    '',
    'Told with the file, the line and the column; an import with such a problem changes nothing.',
    '',
    '| code | sentence |',
    '|---|---|',
    ...rows,
    '',
  ];
  return [...head, ...catalogues.map((catalogue) => section(catalogue, source)), ...files].join('\n');
}
