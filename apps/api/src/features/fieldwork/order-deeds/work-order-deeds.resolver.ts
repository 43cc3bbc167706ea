import { Args, ID, Int, Mutation, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { DateScalar } from '../../../platform/graphql/scalars.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { WorkOrderInput } from '../orders/work-order.input.js';
import { ApproveWorkOrder } from './approval/approve-work-order.service.js';
import { AssignWorkOrder } from './assign-work-order.service.js';
import { ChangeWorkOrder } from './change-work-order.service.js';
import { crewAndDay } from '../crews/crew-and-day.js';
import { CreateWorkOrder } from './create-work-order.service.js';
import { DropWorkOrder } from './drop-work-order.service.js';
import { WorkOrderResult, showOutcome } from './outcomes.type.js';

const Id = () => Args('id', { type: () => ID });
const Version = () => Args('version', { type: () => Int });
const Input = () => Args('input', { type: () => WorkOrderInput });

/** What the office and the crew leads decide about work orders. */
@Resolver()
export class WorkOrderDeedsResolver {
  constructor(
    private readonly make: CreateWorkOrder,
    private readonly change: ChangeWorkOrder,
    private readonly assign: AssignWorkOrder,
    private readonly approve: ApproveWorkOrder,
    private readonly drop: DropWorkOrder,
  ) {}

  @Allow(Permission.AssignWork)
  @Mutation(() => WorkOrderResult)
  async createWorkOrder(@Tx() tx: OrganizationTransaction, @Input() input: WorkOrderInput): Promise<object> {
    return showOutcome(tx, await this.make.run(tx, input));
  }

  @Allow(Permission.AssignWork)
  @Mutation(() => WorkOrderResult)
  async changeWorkOrder(
    @Tx() tx: OrganizationTransaction,
    @Id() id: string,
    @Version() version: number,
    @Input() input: WorkOrderInput,
  ): Promise<object> {
    return showOutcome(tx, await this.change.run(tx, id, version, input));
  }

  @Allow(Permission.AssignWork)
  @Mutation(() => WorkOrderResult)
  async assignWorkOrder(
    @Tx() tx: OrganizationTransaction,
    @Id() id: string,
    @Version() version: number,
    @Args('crewId', { type: () => ID, nullable: true }) crewId: string | null,
    @Args('day', { type: () => DateScalar, nullable: true }) day: string | null,
  ): Promise<object> {
    return showOutcome(tx, await this.assign.run(tx, id, version, await crewAndDay(tx, crewId, day)));
  }

  @Allow(Permission.ApproveWork)
  @Mutation(() => WorkOrderResult)
  async approveWorkOrder(@Tx() tx: OrganizationTransaction, @Id() id: string, @Version() version: number): Promise<object> {
    return showOutcome(tx, await this.approve.run(tx, id, version));
  }

  @Allow(Permission.AssignWork)
  @Mutation(() => WorkOrderResult)
  async dropWorkOrder(
    @Tx() tx: OrganizationTransaction,
    @Id() id: string,
    @Version() version: number,
    @Args('why', { type: () => String }) why: string,
  ): Promise<object> {
    return showOutcome(tx, await this.drop.run(tx, id, version, why));
  }
}
