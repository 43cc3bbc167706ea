import type { Operation } from '../../../offline/operation.js';
import { type Step, stopPath } from '../urls.js';

/** The step at which each kind is said, and the field that names the thing within it. */
const STEP_OF: Readonly<Record<string, readonly [step: Step, thing: string | null]>> = {
  'note-zone': ['zones', 'zoneId'],
  reading: ['meter', 'meterId'],
  settings: ['settings', 'controllerId'],
  'flow-test': ['tests', 'zoneId'],
  'catch-test': ['tests', 'zoneId'],
  'close-visit': ['done', null],
  'end-order': ['done', null],
};

const UUID = /[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}/gi;

/** Where a thing was said, so that it can be said anew; null where the phone does not know the stop any more. */
export function whereItBelongs(one: Operation, operations: readonly Operation[]): string | null {
  const [step, thing] = STEP_OF[one.kind] ?? [];
  if (!step) return null;
  const body = JSON.parse(one.body) as Readonly<Record<string, unknown>>;
  const stopId = stopOf(one, body, operations);
  const named = thing ? body[thing] : null;
  return stopId && stopPath(stopId, step, typeof named === 'string' ? named : null);
}

/** A visit begun here names its stop; readings, settings and tests name it in their subject. */
function stopOf(one: Operation, body: Readonly<Record<string, unknown>>, operations: readonly Operation[]): string | null {
  const arrival = operations.find(({ key, kind }) => kind === 'arrive' && key === body['visitId']);
  if (arrival) return (JSON.parse(arrival.body) as { readonly stopId: string }).stopId;
  if (one.kind === 'note-zone' || one.kind === 'close-visit' || one.kind === 'end-order') return null;
  return one.subject.match(UUID)?.[0] ?? null;
}
