import { defineLoader, grouped } from '../../../platform/graphql/loader.js';
import type { VisitRow } from './visit.entity.js';
import { visits } from './visit.repository.js';

const latestOf = (rows: readonly VisitRow[]): Map<string, VisitRow> =>
  new Map([...grouped(rows, (row) => row.stopId!)].map(([stopId, [latest]]) => [stopId, latest!]));

/** The latest visit to a stop. */
export const visitOfStop = defineLoader<string, VisitRow | null>(async (tx, stopIds) => latestOf(await visits.seen(tx, { stopIds })), null);

/** The arrival at a stop that was taken back. */
export const withdrawnOfStop = defineLoader<string, VisitRow | null>(
  async (tx, stopIds) => latestOf(await visits.seen(tx, { stopIds, withdrawn: true })),
  null,
);
