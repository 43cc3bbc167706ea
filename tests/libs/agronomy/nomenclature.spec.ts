import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';

const top = path.resolve(import.meta.dirname, '../../..');
const source = path.join(top, 'libs/agronomy/src');

/** Names in the second column of the tables below the heading of formulas. */
const named = (): Set<string> => {
  const [, formulas = ''] = readFileSync(path.join(top, 'docs/nomenclature.md'), 'utf8').split('## Symbols of the formulas\n');
  const section = formulas.split(/^## /m)[0] ?? '';
  const cells = section.split('\n').flatMap((line) => line.split('|')[2] ?? []);
  return new Set(cells.flatMap((cell) => Array.from(cell.matchAll(/`(\w+)`/g), (match) => match[1] ?? '')));
};

describe('docs/nomenclature.md', () => {
  it('names every parameter of the agronomy library', () => {
    const names = named();
    const files = readdirSync(source, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));
    const used = files.flatMap((file) =>
      Array.from(readFileSync(path.join(source, file), 'utf8').matchAll(/@param (\w+)/g), (match) => `${match[1]} in ${file}`),
    );
    expect(used.length).toBeGreaterThan(100);
    expect(used.filter((use) => !names.has(use.split(' ')[0] ?? ''))).toEqual([]);
  });
});
