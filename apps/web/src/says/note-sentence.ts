import type { AccountNote } from '@rillbook/metering/account/month-account.js';
import { type Details, detailsOf, type Reason } from './reason.js';
import { messageOf, type Saying, wordOf } from './saying.js';
import { sourceValues } from './source-values.js';
import { zoneValues } from './zone-values.js';

export type NoteCode = AccountNote['code'];

/** The values that each code's message is given. The record is complete: a new code of the library does not compile without its words. */
export const noteValues: Readonly<Record<NoteCode, (saying: Saying, details: Details) => Record<string, string | number>>> = {
  'weather-starts-later': ({ formats }, details) => ({
    from: formats.day(details.text('from')),
    days: details.number('daysBefore') ?? 0,
    wanted: details.number('daysWanted') ?? 0,
  }),
  'weather-missing-before-month': (_, details) => ({ days: details.number('days') ?? 0 }),
  'weather-filled': (_, details) => ({ neighbour: details.number('neighbourDays') ?? 0, normals: details.number('normalDays') ?? 0 }),
  'weather-rain-from-neighbour': (_, details) => ({ days: details.number('days') ?? 0 }),
  'weather-rain-not-known': (_, details) => ({ days: details.number('days') ?? 0 }),
  'special-landscape-area-capped': ({ formats }, details) => ({
    special: formats.quantity('area', details.number('specialLandscapeAreaM2')),
    irrigated: formats.quantity('area', details.number('irrigatedAreaM2')),
  }),
  'volume-estimated': (saying, details) => ({
    share: saying.formats.percent(details.number('share')),
    volume: messageOf(saying, `gauge.${details.text('volume')}`) ?? '',
  }),
  'programmed-from-weather': ({ formats, names }, details) => ({
    share: formats.percent(details.number('share')),
    controller: names.of(details.text('controllerId')) ?? 'none',
  }),
  'sources-contradict': sourceValues,
  'plants-establishing': (saying, details) => ({
    ...zoneValues(saying, zoneIdsOf(details)),
    share: saying.formats.percent(details.number('share')),
  }),
  'input-assumed': (saying, details) => ({
    ...zoneValues(saying, zoneIdsOf(details)),
    input: wordOf(saying.intl, 'assumed', details.text('input') ?? ''),
  }),
};

const zoneIdsOf = (details: Details): readonly string[] => {
  const one = details.text('zoneId');
  return one === null ? details.texts('zoneIds') : [one];
};

/** What the reader of an account should know, as a sentence; null for a code without words. */
export function noteSentence(saying: Saying, note: Reason): string | null {
  if (!Object.hasOwn(noteValues, note.code)) return null;
  const sentence = messageOf(saying, `says.note.${note.code}`, noteValues[note.code as NoteCode](saying, detailsOf(note)));
  return sentence && sentence.charAt(0).toLocaleUpperCase() + sentence.slice(1);
}

/** Notes that say the same of several zones become one. */
export function gatheredNotes(notes: readonly Reason[]): readonly Reason[] {
  const assumed = new Map<string, string[]>();
  const others = notes.filter((note) => {
    const details = detailsOf(note);
    const [input, zoneId] = [details.text('input'), details.text('zoneId')];
    if (note.code !== 'input-assumed' || input === null || zoneId === null) return true;
    assumed.set(input, [...(assumed.get(input) ?? []), zoneId]);
    return false;
  });
  return [...others, ...[...assumed].map(([input, zoneIds]) => ({ code: 'input-assumed', details: { input, zoneIds } }))];
}
