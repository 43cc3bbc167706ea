import { defineLoader, grouped } from '../../../platform/graphql/loader.js';
import type { StopRow } from './stop.entity.js';
import { stops } from './stop.repository.js';

/** The stops of a route, in their order. */
export const stopsOfRoute = defineLoader<string, readonly StopRow[]>(
  async (tx, ids) => grouped(await stops.ofRoutes(tx, ids), (row) => row.routeId),
  [],
);
