import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { VersionConflict } from '../../../../platform/records/kept-records.js';
import { findingOfId } from '../../../findings/finding.loader.js';
import { SettleFinding } from '../../../findings/deciding/settle-finding.service.js';
import { type Finding, showFinding } from '../../../findings/finding.type.js';
import { fieldworkProblems } from '../../fieldwork.problems.js';
import type { WorkOrderRow } from '../../orders/work-order.entity.js';
import type { WorkOrderInput } from '../../orders/work-order.input.js';
import { personNameOfId } from '../../../../platform/records/person-name.loader.js';
import { MakeOrder, type Wish } from '../make-order.service.js';

type FindingRow = NonNullable<Awaited<ReturnType<ReturnType<(typeof findingOfId)['of']>['load']>>>;

/** A finding in work, and the work order that answers it. */
export interface Accepted {
  readonly finding: Finding;
  readonly order: WorkOrderRow;
}

/** Turns a finding into work: makes the work order and moves the finding to 'in work'. */
@Injectable()
export class AcceptFinding {
  constructor(
    private readonly settle: SettleFinding,
    private readonly make: MakeOrder,
  ) {}

  async run(
    tx: OrganizationTransaction,
    id: string,
    version: number,
    input: WorkOrderInput,
    wish: Wish = 'work',
  ): Promise<Accepted | VersionConflict> {
    const row = await findingOfId.of(tx).load(id);
    if (!row) throw platformProblems.notFound({ thing: 'finding', id });
    // The same decision sent twice is one decision for the finding; for its work order it is not.
    if (row.version !== version)
      return new VersionConflict(id, row.version, row.decidedBy && (await personNameOfId.of(tx).load(row.decidedBy)), row.decidedAt);
    judge(row, input);
    await this.make.planAhead(tx, { ...input, controllerId: input.controllerId || row.controllerId });
    const moved = await this.settle.toWork(tx, id, version);
    if (moved instanceof VersionConflict) return moved;
    findingOfId.of(tx).clear(id).prime(id, moved);
    return { finding: showFinding(moved), order: await this.make.run(tx, input, row, null, wish) };
  }
}

function judge({ id, state, propertyId }: FindingRow, input: WorkOrderInput): void {
  if (state === 'resolved' || state === 'dismissed') throw fieldworkProblems.findingSettled({ findingId: id, state });
  if (input.propertyId !== propertyId)
    throw platformProblems.valueRefused({
      field: 'propertyId',
      found: input.propertyId,
      expected: `the finding's property, ${propertyId}`,
    });
}
