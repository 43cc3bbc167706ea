import type { Operation } from '../../../../offline/operation.js';

/** The subject under which this phone says that it came to a stop. */
export const arrivalOf = (stopId: string): string => `arrive ${stopId}`;

/** The subject under which it takes an arrival back. */
export const withdrawalOf = (visitId: string): string => `withdraw ${visitId}`;

/** The arrival at a stop that this phone told and did not take back. */
export function ownArrival(operations: readonly Operation[], stopId: string): Operation | null {
  const own = operations.findLast(({ subject }) => subject === arrivalOf(stopId));
  return own && !operations.some(({ subject }) => subject === withdrawalOf(own.key)) ? own : null;
}

/** What is done at a stop without a word of the visit: it is of the stop to which this phone came last. */
const OF_STOP: ReadonlySet<string> = new Set(['reading', 'settings', 'end-order']);

/** The arrival that can be taken back: this phone's own, of a visit that goes on, with nothing done here since; null where there is none. */
export function takenBackOf(
  operations: readonly Operation[],
  own: Operation | null,
  visit: { readonly id: string; readonly closedAt?: string | null } | null,
): Operation | null {
  if (!own || own.state === 'refused' || !visit || visit.closedAt) return null;
  return isEmptySince(operations, own, visit.id) ? own : null;
}

/** Whether nothing was saved on this phone of the visit to which it came, by either name. */
function isEmptySince(operations: readonly Operation[], arrival: Operation, visitId: string): boolean {
  const later = operations.filter(({ seq }) => seq > arrival.seq);
  const nextArrival = later.find(({ kind }) => kind === 'arrive')?.seq ?? Number.POSITIVE_INFINITY;
  const names: ReadonlySet<unknown> = new Set([arrival.key, visitId]);
  return !later.some(({ kind, seq, body }) => (seq < nextArrival && OF_STOP.has(kind)) || names.has(visitOf(body)));
}

const visitOf = (body: string): unknown => (JSON.parse(body) as { visitId?: unknown }).visitId;
