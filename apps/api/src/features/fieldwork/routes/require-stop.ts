import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { crewInScope } from '../crews/crew-scope.js';
import type { RouteRow } from './route.entity.js';
import { routes } from './route.repository.js';
import type { StopRow } from './stop.entity.js';
import { stops } from './stop.repository.js';

/** A stop with its route. */
export interface StopOnRoute {
  readonly stop: StopRow;
  readonly route: RouteRow;
}

/** The stop with its route, also when it was taken off it, if the actor sees the work of its crew. */
export async function findStop(tx: OrganizationTransaction, id: string): Promise<StopOnRoute | null> {
  const [stop] = isUuid(id) ? await stops.ofIds(tx, [id]) : [];
  const [route] = stop ? await routes.ofIds(tx, [stop.routeId]) : [];
  return stop && route && (await crewInScope(tx, route.crewId)) ? { stop, route } : null;
}

/** The same, where it must be there. */
export async function requireStop(tx: OrganizationTransaction, id: string): Promise<StopOnRoute> {
  const found = await findStop(tx, id);
  if (!found) throw platformProblems.notFound({ thing: 'stop', id });
  return found;
}
