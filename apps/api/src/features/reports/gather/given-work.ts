import type { GivenFinding, GivenPhoto, GivenWork, WordsOfOrder } from '@rillbook/showing/report/report-input.js';
import { dayIn } from './day-in.js';
import type { ordersOfProperty } from '../../fieldwork/orders/lists/orders-of-property.loader.js';

type Order = Awaited<ReturnType<ReturnType<typeof ordersOfProperty.of>['load']>>[number];

/** Work by which water is saved; reading and looking alone do not. */
const SAVES = new Set(['adjust', 'repair', 'upgrade']);

/** What a report tells beside an order: its pictures, and the findings of its property. */
export interface BesideOrder {
  readonly photos: readonly GivenPhoto[];
  readonly findings: readonly GivenFinding[];
}

/** A work order as a report takes it. */
export function givenWork(order: Order, timeZone: string, { photos, findings }: BesideOrder): GivenWork {
  const { id, kind, state, what, doneAt, doneNote } = order;
  const doneOn = doneAt && dayIn(timeZone, doneAt);
  return { id, kind, state, what, ...productsWords(order, findings), doneOn, doneNote, cost: costOf(order), photos };
}

/** Of what the product wrote what the order says; nothing where somebody wrote it, or its finding is not there. */
function productsWords({ wordsOf, findingId }: Order, findings: readonly GivenFinding[]): { wordsOf?: WordsOfOrder } {
  if (wordsOf === 'season') return { wordsOf: { by: 'season' } };
  const finding = wordsOf === 'finding' ? findings.find(({ id }) => id === findingId) : undefined;
  if (!finding) return {};
  const { kind, zones, controller } = finding;
  return { wordsOf: { by: 'finding', kind, zones, ...(controller !== undefined && { controller }) } };
}

/** Labour and parts; null where neither is known, or hours have no rate. */
function costOf({ labourHours, labourRate, parts }: Order): number | null {
  if (labourHours !== null && labourRate === null) return null;
  const labour = labourHours === null || labourRate === null ? null : labourHours * labourRate;
  if (labour === null && parts.length === 0) return null;
  return (labour ?? 0) + parts.reduce((sum, { count, price }) => sum + count * price, 0);
}

/** The month in which work that saves water was first done; null where none was. */
export function firstWork(work: readonly GivenWork[]): string | null {
  const months = work.flatMap(({ kind, doneOn, state }) => (SAVES.has(kind) && state === 'done' && doneOn ? [doneOn.slice(0, 7)] : []));
  return months.length ? months.reduce((first, month) => (month < first ? month : first)) : null;
}
