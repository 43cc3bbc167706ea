import type { Body } from './body.js';

/** A reading as a phone tells it. */
export const readingOf = (deviceRecordId: string, body: Body) => ({
  deviceRecordId,
  meterId: body.text('meterId'),
  readAt: body.instant('readAt'),
  register: body.number('register'),
  note: body.textOrNull('note'),
  replacesId: body.textOrNull('replacesId'),
});

/** Settings as a phone tells them. */
export const settingsOf = (deviceRecordId: string, body: Body) => ({
  deviceRecordId,
  controllerId: body.text('controllerId'),
  effectiveAt: body.instant('effectiveAt'),
  record: body.text('record'),
  state: body.text('state'),
  programs: body.list('programs').map((program) => ({
    name: program.text('name'),
    days: program.text('days'),
    starts: program.texts('starts'),
    adjustPercent: program.numberOrNull('adjustPercent'),
    stations: program.list('stations').map((station) => ({
      station: station.number('station'),
      minutes: station.number('minutes'),
      cycles: station.numberOrNull('cycles'),
      soakMinutes: station.numberOrNull('soakMinutes'),
    })),
  })),
});

/** What is said of a zone, as a phone tells it. */
export const zoneNoteOf = (body: Body) => ({
  visitId: body.text('visitId'),
  zoneId: body.textOrNull('zoneId'),
  kind: body.text('kind'),
  count: body.number('count'),
  word: body.textOrNull('word'),
  repaired: body.flag('repaired'),
  noteId: body.textOrNull('noteId'),
});

/** How a visit ended, as a phone tells it. */
export const closingOf = (body: Body) => ({
  closedAt: body.instant('closedAt'),
  doneNote: body.textOrNull('doneNote')?.trim() || null,
  leftNote: body.textOrNull('leftNote')?.trim() || null,
  workedMinutes: body.numberOrNull('workedMinutes'),
  materials: body.list('materials').map((one) => ({ name: one.text('name'), count: one.number('count'), unit: one.textOrNull('unit') })),
});

/** What the phone showed of a note when it was said again; null where it showed none, undefined where the phone does not tell. */
export const noteBefore = (body: Body) =>
  body.record('over', (over) => ({ count: over.number('count'), word: over.textOrNull('word'), repaired: over.flag('repaired') }));

/** The same of an ending. */
export const closingBefore = (body: Body) => body.record('over', closingOf);
