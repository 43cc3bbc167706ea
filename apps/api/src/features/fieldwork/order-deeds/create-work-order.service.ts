import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Permission, roleIncludes } from '../../../platform/identity/permission.js';
import { brokenConstraint } from '../../../platform/problems/constraint-problems.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { findingOfId } from '../../findings/finding.loader.js';
import type { WorkOrderRow } from '../orders/work-order.entity.js';
import type { WorkOrderInput } from '../orders/work-order.input.js';
import { workOrders } from '../orders/work-order.repository.js';
import { AcceptFinding } from './from-finding/accept-finding.service.js';
import { MakeOrder } from './make-order.service.js';
import { VersionConflict } from '../../../platform/records/kept-records.js';
import { fieldworkProblems } from '../fieldwork.problems.js';

/** Makes a work order, on its own or for a finding, which is then in work. */
@Injectable()
export class CreateWorkOrder {
  constructor(
    private readonly make: MakeOrder,
    private readonly accept: AcceptFinding,
  ) {}

  async run(tx: OrganizationTransaction, input: WorkOrderInput): Promise<WorkOrderRow> {
    if (!input.findingId) return (await keptUnderItsName(tx, input)) ?? this.keep(tx, input);
    if (!roleIncludes(tx.actor.role, Permission.DecideFindings))
      throw platformProblems.notAllowed({ permission: Permission.DecideFindings });
    const finding = await findingOfId.of(tx).load(input.findingId);
    if (!finding) throw platformProblems.notFound({ thing: 'finding', id: input.findingId });
    const accepted = await this.accept.run(tx, finding.id, finding.version, input);
    if (accepted instanceof VersionConflict)
      throw fieldworkProblems.changedSinceRead({
        thing: 'finding',
        id: finding.id,
        version: accepted.version,
        changedBy: accepted.changedBy,
      });
    return accepted.order;
  }

  private async keep(tx: OrganizationTransaction, input: WorkOrderInput): Promise<WorkOrderRow> {
    await this.make.planAhead(tx, input);
    try {
      return await tx.attempt(async () => this.make.run(tx, input, null));
    } catch (problem) {
      // Another request with the same order was quicker.
      const kept = brokenConstraint(problem)?.name === 'work_order_key' ? await keptUnderItsName(tx, input) : null;
      if (kept) return kept;
      throw problem;
    }
  }
}

/** The order that was kept when the same was sent before; null where it comes for the first time. */
async function keptUnderItsName(
  tx: OrganizationTransaction,
  { deviceRecordId, propertyId, kind }: WorkOrderInput,
): Promise<WorkOrderRow | null> {
  if (!deviceRecordId) return null;
  const [kept] = await workOrders.seen(tx, { ids: [deviceRecordId] });
  if (kept && (kept.propertyId !== propertyId.toLowerCase() || kept.kind !== kind))
    throw platformProblems.valueRefused({ field: 'deviceRecordId', found: deviceRecordId, expected: 'a UUID of its own for each record' });
  return kept ?? null;
}
