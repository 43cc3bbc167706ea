import type { OrganizationTransaction } from '../../platform/database/organization-transaction.js';
import { controllerOfId } from '../portfolio/controllers/controller.loader.js';
import { propertyOfId } from '../portfolio/properties/property.loader.js';

/** The time zone of the property on which a controller stands. */
export async function timeZoneOfController(tx: OrganizationTransaction, controllerId: string): Promise<string> {
  const controller = await controllerOfId.of(tx).load(controllerId);
  const property = await propertyOfId.of(tx).load(controller!.propertyId);
  return property!.timeZone;
}
