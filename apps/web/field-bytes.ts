import path from 'node:path';
import type { Plugin } from 'vite';

/** Where what a phone reads before it draws a page of the field begins: the start itself, and what the start fetches for it. */
export const FIELD_STARTS = [
  'main.tsx',
  ...['device/FieldPhone.tsx', 'today/TodayPage.tsx', 'stop/StopPage.tsx', 'phone/PhonePage.tsx'].map(
    (page) => `features/fieldwork/${page}`,
  ),
].map((file) => path.join(import.meta.dirname, 'src', file));

/** A language is one file, and a phone reads one of them: the larger counts. */
const LANGUAGES = ['en/english.ts', 'es/spanish.ts'].map((file) => path.join(import.meta.dirname, 'src/i18n/messages', file));

/** What all files together may weigh that a phone reads before it draws a stop; more is slower than two seconds on a slow phone. [B] */
export const MOST_BYTES = 1_060_000;

/** A file of the bundle, as far as it is weighed. */
interface File {
  readonly type: string;
  readonly code?: string;
  readonly imports?: readonly string[];
  readonly moduleIds?: readonly string[];
}

/** What a phone reads before it draws a page of the field, by file. [B] */
export function fieldBytes(bundle: Readonly<Record<string, File>>): ReadonlyMap<string, number> {
  const holding = (module: string): string[] => Object.keys(bundle).filter((name) => bundle[name]?.moduleIds?.includes(module));
  const bytes = (name: string): number => Buffer.byteLength(bundle[name]?.code ?? '');
  const heaviest = LANGUAGES.flatMap(holding).sort((a, b) => bytes(b) - bytes(a));
  const open = [...FIELD_STARTS.flatMap(holding), ...heaviest.slice(0, 1)];
  const read = new Map<string, number>();
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (read.has(next)) continue;
    read.set(next, bytes(next));
    open.push(...(bundle[next]?.imports ?? []));
  }
  return read;
}

/** Why a build is refused; null where the phone reads little enough. */
export function tooHeavy(read: ReadonlyMap<string, number>, most = MOST_BYTES): string | null {
  const sum = [...read.values()].reduce((all, one) => all + one, 0);
  if (sum === 0) return 'The files of the field were not found in the bundle: look at FIELD_STARTS in field-bytes.ts.';
  if (sum <= most) return null;
  const files = [...read].map(([name, size]) => `${name} ${size}`).join(', ');
  return `A phone would read ${sum} bytes before it draws a stop, and may read ${most}: ${files}. Import less in what the field shares, or measure a cold start (prove offline-day) before the limit is raised.`;
}

/** Refuses a build of which a phone would read too much before it draws. */
export const fieldWithinBytes = (): Plugin => ({
  name: 'field-within-bytes',
  apply: 'build',
  generateBundle(_, bundle) {
    const why = tooHeavy(fieldBytes(bundle as Readonly<Record<string, File>>));
    if (why) this.error(why);
  },
});
