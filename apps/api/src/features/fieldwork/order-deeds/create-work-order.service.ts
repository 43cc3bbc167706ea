import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Permission, roleIncludes } from '../../../platform/identity/permission.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { findingOfId } from '../../findings/finding.loader.js';
import type { WorkOrderRow } from '../orders/work-order.entity.js';
import type { WorkOrderInput } from '../orders/work-order.input.js';
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
    if (!input.findingId) {
      await this.make.planAhead(tx, input);
      return this.make.run(tx, input, null);
    }
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
}
