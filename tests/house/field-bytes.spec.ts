import path from 'node:path';
import { expect, it } from 'vitest';

const { FIELD_STARTS, fieldBytes, tooHeavy } = (await import('../../apps/web/field-bytes.js' as string)) as {
  readonly FIELD_STARTS: readonly string[];
  readonly fieldBytes: (bundle: Readonly<Record<string, object>>) => ReadonlyMap<string, number>;
  readonly tooHeavy: (read: ReadonlyMap<string, number>, most?: number) => string | null;
};

const messages = path.resolve(import.meta.dirname, '../../apps/web/src/i18n/messages');
const file = (code: string, moduleIds: readonly string[], imports: readonly string[] = []) => ({ type: 'chunk', code, moduleIds, imports });
const [main = '', ...pages] = FIELD_STARTS;
const bundle = {
  'index.js': file('12345', [main], ['shared.js']),
  'field.js': file('é', pages, ['shared.js', 'deep.js']),
  'shared.js': file('1234567', []),
  'deep.js': file('1', []),
  'desk.js': file('x'.repeat(1000), []),
  'english.js': file('123', [path.join(messages, 'en/english.ts')]),
  'spanish.js': file('1234', [path.join(messages, 'es/spanish.ts')]),
  'index.css': { type: 'asset' },
};

it('weighs what a phone reads before it draws: the start, the pages of the field, what they import, and the heavier language', () => {
  expect(Object.fromEntries(fieldBytes(bundle))).toEqual({ 'index.js': 5, 'field.js': 2, 'shared.js': 7, 'deep.js': 1, 'spanish.js': 4 });
});

it('refuses a bundle that is heavier than the limit, and one in which it finds nothing to weigh', () => {
  const read = fieldBytes(bundle);
  expect(tooHeavy(read, 19)).toBeNull();
  expect(tooHeavy(read, 18)).toMatch(/would read 19 bytes .* may read 18: .*shared\.js 7/);
  expect(tooHeavy(fieldBytes({ 'desk.js': bundle['desk.js'] }))).toMatch(/not found/);
});
