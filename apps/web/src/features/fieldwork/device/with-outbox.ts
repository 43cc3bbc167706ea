import type { Operation } from '../../../offline/operation.js';

type Fields = Readonly<Record<string, unknown>>;

const isFields = (value: unknown): value is Fields => typeof value === 'object' && value !== null && !Array.isArray(value);
const bodyOf = (operation: Operation): Fields => JSON.parse(operation.body) as Fields;

interface Said {
  readonly key: string;
  readonly kind: string;
  readonly body: Fields;
}

/**
 * What the server told, with what was saved on this phone laid over it. Laid over what already holds it, it changes nothing, so that it does
 * not matter whether the server has heard of it.
 */
export function withOutbox(data: unknown, operations: readonly Operation[]): unknown {
  const said = operations.filter(({ state }) => state !== 'refused').map((one) => ({ key: one.key, kind: one.kind, body: bodyOf(one) }));
  return said.length > 0 ? laidOver(data, said) : data;
}

/** Stops are found wherever they stand: in a day's route, or alone with their route within. */
function laidOver(value: unknown, said: readonly Said[]): unknown {
  if (Array.isArray(value)) return value.map((one: unknown) => laidOver(one, said));
  if (!isFields(value)) return value;
  const inside = Object.fromEntries(Object.entries(value).map(([name, one]) => [name, laidOver(one, said)]));
  switch (value['__typename']) {
    case 'Stop':
      return stopWith(inside, said);
    case 'WorkOrder':
      return said.reduce(orderWith, inside);
    case 'Controller':
      return said.reduce(controllerWith, inside);
    default:
      return inside;
  }
}

function stopWith(stop: Fields, said: readonly Said[]): Fields {
  if (!('visit' in stop)) return stop;
  const gone = goneOf(said);
  const arrival = said.findLast(({ key, kind, body }) => kind === 'arrive' && body['stopId'] === stop['id'] && !gone.has(key));
  const visit = isFields(stop['visit']) && !isGone(stop['visit'], gone) ? stop['visit'] : arrival ? begun(arrival) : null;
  return { ...stop, visit: visit && saidOf(visit, arrival, said).reduce(visitWith, visit) };
}

/** When this phone came, by the names of the arrivals that it took back. */
function goneOf(said: readonly Said[]): ReadonlyMap<unknown, unknown> {
  const gone = new Set(said.flatMap(({ kind, body }) => (kind === 'withdraw-visit' ? [body['visitId']] : [])));
  return new Map(said.flatMap(({ key, kind, body }) => (kind === 'arrive' && gone.has(key) ? [[key, body['arrivedAt']] as const] : [])));
}

/** One that goes on with who else came begins when they did. */
const isGone = ({ id, arrivedAt }: Fields, gone: ReadonlyMap<unknown, unknown>): boolean =>
  gone.has(id) && Date.parse(String(arrivedAt)) === Date.parse(String(gone.get(id)));

/** Where somebody of the crew was there first, what this phone says of the visit that it began is said of theirs. */
const saidOf = (visit: Fields, arrival: Said | undefined, said: readonly Said[]): readonly Said[] =>
  said.map((one) => (arrival && one.body['visitId'] === arrival.key ? { ...one, body: { ...one.body, visitId: visit['id'] } } : one));

const begun = ({ key, body }: Said): Fields => ({
  __typename: 'Visit',
  id: key,
  version: 1,
  arrivedAt: body['arrivedAt'],
  closedAt: null,
  doneNote: null,
  leftNote: null,
  workedMinutes: null,
  materials: [],
  zoneNotes: [],
  zoneTests: [],
  photos: [],
});

function visitWith(visit: Fields, { key, kind, body }: Said): Fields {
  if (body['visitId'] !== visit['id']) return visit;
  if (kind === 'close-visit') {
    const { closedAt, doneNote, leftNote, workedMinutes } = body;
    return { ...visit, closedAt, doneNote, leftNote, workedMinutes, materials: materialsIn(body) };
  }
  return kind === 'note-zone' && Array.isArray(visit['zoneNotes'])
    ? { ...visit, zoneNotes: notesWith(visit['zoneNotes'] as readonly Fields[], key, body) }
    : visit;
}

const materialsIn = ({ materials }: Fields): readonly Fields[] =>
  Array.isArray(materials) ? (materials as readonly Fields[]).map((one) => ({ __typename: 'VisitMaterial', ...one })) : [];

/** A visit has one note for each zone and kind; of the kind 'other' one for each name, or for each word where older pages gave none. */
function notesWith(notes: readonly Fields[], key: string, body: Fields): readonly Fields[] {
  const { zoneId, kind, count, word, repaired, noteId = null } = body;
  const isSame = (note: Fields): boolean =>
    note['zoneId'] === zoneId && note['kind'] === kind && (kind !== 'other' || (noteId ? note['id'] === noteId : note['word'] === word));
  const present = notes.find(isSame);
  const note = { __typename: 'ZoneNote', id: noteId ?? key, ...present, zoneId, kind, count, word, repaired };
  return present ? notes.map((one) => (one === present ? note : one)) : [...notes, note];
}

function orderWith(order: Fields, { kind, body }: Said): Fields {
  if (kind !== 'end-order' || body['workOrderId'] !== order['id']) return order;
  return body['done'] ? { ...order, state: 'done', doneNote: body['note'] } : { ...order, state: 'open', leftNote: body['note'] };
}

/** The latest of what was found or left here, unless the server knows of something later. */
function controllerWith(controller: Fields, { key, kind, body }: Said): Fields {
  if (kind !== 'settings' || body['controllerId'] !== controller['id'] || !('presentSettings' in controller)) return controller;
  const present = isFields(controller['presentSettings']) ? controller['presentSettings'] : null;
  if (present && Date.parse(String(present['effectiveAt'])) >= Date.parse(String(body['effectiveAt']))) return controller;
  const { effectiveAt, localTime, record, state, programs } = body;
  const programsShown = (programs as readonly Fields[]).map((program) => ({
    __typename: 'Program',
    ...program,
    stations: (program['stations'] as readonly Fields[]).map((station) => ({ __typename: 'StationTime', ...station })),
  }));
  return {
    ...controller,
    presentSettings: { __typename: 'Settings', id: key, effectiveAt, localTime, record, state, programs: programsShown },
  };
}
