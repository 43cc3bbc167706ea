import { Args, ID, Int, Mutation, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { Allow } from '../../../../platform/identity/allow.js';
import { Permission } from '../../../../platform/identity/permission.js';
import { Tx } from '../../../../platform/identity/tx.js';
import { CloseOrderInput, WorkOrderInput } from '../../orders/work-order.input.js';
import { AcceptFinding } from './accept-finding.service.js';
import { CloseWorkOrder } from '../close-work-order.service.js';
import { AcceptFindingResult, WorkOrderResult, showAccepted, showOutcome } from '../outcomes.type.js';

/** Where findings and field work meet: a finding becomes work, and work that is closed may resolve it. */
@Resolver()
export class FindingWorkResolver {
  constructor(
    private readonly accept: AcceptFinding,
    private readonly close: CloseWorkOrder,
  ) {}

  @Allow(Permission.DecideFindings)
  @Mutation(() => AcceptFindingResult)
  async acceptFinding(
    @Tx() tx: OrganizationTransaction,
    @Args('id', { type: () => ID }) id: string,
    @Args('version', { type: () => Int }) version: number,
    @Args('input', { type: () => WorkOrderInput }) input: WorkOrderInput,
  ): Promise<object> {
    return showAccepted(await this.accept.run(tx, id, version, input));
  }

  @Allow(Permission.RecordFieldwork)
  @Mutation(() => WorkOrderResult)
  async closeWorkOrder(
    @Tx() tx: OrganizationTransaction,
    @Args('input', { type: () => CloseOrderInput }) input: CloseOrderInput,
  ): Promise<object> {
    return showOutcome(tx, await this.close.run(tx, input));
  }
}
