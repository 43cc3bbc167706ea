import { Field, Float, ObjectType, createUnionType } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { ChangedMeanwhile, changedMeanwhile } from '../../../platform/graphql/outcomes.type.js';
import { VersionConflict } from '../../../platform/records/kept-records.js';
import { Finding } from '../../findings/finding.type.js';
import { notToExceedOfProperty } from '../orders/not-to-exceed.loader.js';
import { exceeds, leastCost } from '../orders/work-order-cost.js';
import type { WorkOrderRow } from '../orders/work-order.entity.js';
import { WorkOrder, showWorkOrder } from '../orders/work-order.type.js';
import type { Accepted } from './from-finding/accept-finding.service.js';

/** The work order is kept, and waits: it costs more than the client lets be spent without asking. */
@ObjectType()
export class ApprovalNeeded {
  /** the part of the cost that is known */
  @Field(() => Float)
  cost: number;

  @Field(() => Float)
  notToExceed: number;

  @Field(() => WorkOrder)
  workOrder: WorkOrder;
}

/** The finding is in work, with the work order that answers it. */
@ObjectType()
export class FindingAccepted {
  @Field(() => Finding)
  finding: Finding;

  @Field(() => WorkOrder)
  workOrder: WorkOrder;
}

const resolveType = (value: object) => value.constructor as never;

export const WorkOrderResult = createUnionType({
  name: 'WorkOrderResult',
  types: () => [WorkOrder, ChangedMeanwhile, ApprovalNeeded] as const,
  resolveType,
});
export const AcceptFindingResult = createUnionType({
  name: 'AcceptFindingResult',
  types: () => [FindingAccepted, ChangedMeanwhile] as const,
  resolveType,
});

/** What came of a deed on a work order. */
export async function showOutcome(
  tx: OrganizationTransaction,
  result: WorkOrderRow | VersionConflict,
): Promise<WorkOrder | ChangedMeanwhile | ApprovalNeeded> {
  if (result instanceof VersionConflict) return changedMeanwhile(result);
  const notToExceed = await notToExceedOfProperty.of(tx).load(result.propertyId);
  const waits = result.state === 'waiting for approval' && exceeds(result, notToExceed);
  return waits
    ? Object.assign(new ApprovalNeeded(), { cost: leastCost(result), notToExceed, workOrder: showWorkOrder(result) })
    : showWorkOrder(result);
}

/** What came of accepting a finding. */
export function showAccepted(result: Accepted | VersionConflict): FindingAccepted | ChangedMeanwhile {
  if (result instanceof VersionConflict) return changedMeanwhile(result);
  return Object.assign(new FindingAccepted(), { finding: result.finding, workOrder: showWorkOrder(result.order) });
}
