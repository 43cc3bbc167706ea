import { defineLoader, grouped } from '../../../platform/graphql/loader.js';
import type { VisitRow } from './visit.entity.js';
import { visits } from './visit.repository.js';

/** The latest visit to a stop. */
export const visitOfStop = defineLoader<string, VisitRow | null>(async (tx, stopIds) => {
  const groups = grouped(await visits.seen(tx, { stopIds }), (row) => row.stopId!);
  return new Map([...groups].map(([stopId, rows]) => [stopId, rows[0]!]));
}, null);
