import { defineLoader } from '../../../platform/graphql/loader.js';
import type { RouteRow } from './route.entity.js';
import { routes } from './route.repository.js';

/** The route of an id. */
export const routeOfId = defineLoader<string, RouteRow | null>(
  async (tx, ids) => new Map((await routes.ofIds(tx, ids)).map((row) => [row.id, row])),
  null,
);
