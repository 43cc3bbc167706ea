import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { problemPage } from './problem-page.js';

const file = path.resolve(import.meta.dirname, '../../../docs/problems.md');
const page = problemPage(path.resolve(import.meta.dirname, '../src'));

if (!process.argv.includes('--check')) writeFileSync(file, page);
else if (readFileSync(file, 'utf8') !== page) {
  console.error('docs/problems.md is not what the catalogues say. Print it again: node apps/api/dist/print-problems.js');
  process.exitCode = 1;
}
