import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';

const web = path.resolve(import.meta.dirname, '../../apps/web/src');
const LITERAL = /#[0-9a-f]{3,8}\b|\b(rgb|hsl|hwb|lab|lch|oklab|oklch)a?\(/gi;

// What the lint rule does for TypeScript, for style sheets: a colour is named once, for every theme.
it('style sheets name their colours by the tokens of the theme', () => {
  const sheets = readdirSync(web, { recursive: true, encoding: 'utf8' }).filter(
    (file) => file.endsWith('.css') && !file.startsWith(path.join('ui', 'theme')),
  );
  expect(sheets.length).toBeGreaterThan(5);
  const literal = sheets.flatMap((file) =>
    readFileSync(path.join(web, file), 'utf8')
      .split('\n')
      .flatMap((line, n) => [...line.replace(/url\([^)]*\)/g, '').matchAll(LITERAL)].map(([colour]) => `${file}:${n + 1} ${colour}`)),
  );
  expect(literal).toEqual([]);
});
