import type { INestApplicationContext } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { VersionConflict } from '../../../platform/records/kept-records.js';
import { AcceptFinding } from '../../fieldwork/order-deeds/from-finding/accept-finding.service.js';
import { AssignWorkOrder } from '../../fieldwork/order-deeds/assign-work-order.service.js';
import { demo } from './demo.repository.js';
import { type DemoOrder, demoOrders } from './work-of-demo.js';

/**
 * Makes work of some findings and gives it to crews, as the office would.
 *
 * @returns how many findings are in work
 */
export async function giveOutWork(app: INestApplicationContext, tx: OrganizationTransaction, folder: string): Promise<number> {
  let made = 0;
  for (const order of demoOrders[folder] ?? []) if (await giveOut(app, tx, order)) made += 1;
  return made;
}

async function giveOut(app: INestApplicationContext, tx: OrganizationTransaction, order: DemoOrder): Promise<boolean> {
  const { findingKind, property, given, ...input } = order;
  const finding = (await demo.openFinding(tx, findingKind, property)) ?? (await demo.openFinding(tx, findingKind, null));
  if (!finding) return false;
  const parts = input.parts?.map((part) => ({ ...part })) ?? null;
  const accepted = await app
    .get(AcceptFinding)
    .run(tx, finding.id, finding.version, { ...input, parts, propertyId: finding.propertyId, findingId: finding.id });
  if (accepted instanceof VersionConflict) return false;
  if (given) {
    const crewId = await demo.crewId(tx, given.crew);
    await app.get(AssignWorkOrder).run(tx, accepted.order.id, accepted.order.version, { crewId, day: given.day });
  }
  return true;
}
