import type { OrganizationTransaction } from '../../platform/database/organization-transaction.js';
import { platformProblems } from '../../platform/problems/platform.problems.js';
import { isUuid } from '../../platform/records/uuid.js';
import { controllerOfId } from '../portfolio/controllers/controller.loader.js';
import { inScope } from '../portfolio/properties/property-scope.service.js';

type Loaded = Awaited<ReturnType<ReturnType<(typeof controllerOfId)['of']>['load']>>;

/** A controller as its table has it. */
export type KeptController = NonNullable<Loaded>;

/** The controller if the actor may see it, a retired one too. */
export async function controllerInScope(tx: OrganizationTransaction, id: string): Promise<KeptController | null> {
  const controller = isUuid(id) ? await controllerOfId.of(tx).load(id.toLowerCase()) : null;
  return controller && (await inScope(tx, [controller.propertyId])).has(controller.propertyId) ? controller : null;
}

/** The same, where it must be there: absent, another organization's and out of scope are all not found. */
export async function requireController(tx: OrganizationTransaction, id: string): Promise<KeptController> {
  const controller = await controllerInScope(tx, id);
  if (!controller) throw platformProblems.notFound({ thing: 'controller', id });
  return controller;
}
