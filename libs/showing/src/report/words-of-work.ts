import type { Writer } from './figures.js';
import type { GivenFinding, GivenWork } from './report-input.js';
import type { ReportSection } from './report-model.js';

/** What is of a zone, or of one of some, names it; what is of one of several controllers names that. */
export function inZones({ words }: Writer, what: string, { zones, controller }: Pick<GivenFinding, 'zones' | 'controller'>): string {
  if (zones.length) return words.say('found.inZones', { what, zones: words.oneOf(zones) });
  return controller === undefined ? what : words.say('found.ofController', { what, controller });
}

/** What somebody wrote, in quotation marks: it stays in the language in which it was written; empty where nothing was. */
function quoted({ words }: Writer, written: string | null): string {
  const text = written?.trim().replace(/[.\s]+$/, '') ?? '';
  return text ? words.say('work.own', { words: text }) : '';
}

/**
 * What an order says: where the product wrote it, in the report's language; else the office's own words.
 *
 * @param of whether it is told of what was seen or of what is to be done about it
 */
export function wordsOfOrder(writer: Writer, { wordsOf, what }: GivenWork, of: 'found' | 'action'): string {
  if (!wordsOf) return quoted(writer, what);
  if (wordsOf.by === 'season') return writer.words.say('work.season');
  return inZones(writer, writer.words.of(of, wordsOf.kind) ?? wordsOf.kind, wordsOf);
}

/** What was done: what the order says, and what the crew noted; empty where nothing is told. */
export function wordsOfDone(writer: Writer, work: GivenWork): string {
  return [wordsOfOrder(writer, work, 'found'), quoted(writer, work.doneNote)].filter(Boolean).join('. ');
}

/** Whether somebody's own words are told. */
export function tellsOwnWords({ words }: Writer, sections: readonly ReportSection[]): boolean {
  const [mark = ''] = words.say('work.own', { words: '' });
  return sections.some(({ id, lines }) => (id === 'done' || id === 'recommended') && lines.some(({ says }) => says.includes(mark)));
}
