import { defineLoader } from '../../../platform/graphql/loader.js';
import type { StopRow } from './stop.entity.js';
import { stops } from './stop.repository.js';

/** The stop of an id. */
export const stopOfId = defineLoader<string, StopRow | null>(
  async (tx, ids) => new Map((await stops.ofIds(tx, ids)).map((row) => [row.id, row])),
  null,
);
