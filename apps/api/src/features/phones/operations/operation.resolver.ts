import { Args, ID, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { personNameOfId } from '../../../platform/records/person-name.loader.js';
import { DeviceInput, OperationInput } from './operation.input.js';
import { operations } from './operation.repository.js';
import { OpenOperation, OperationVerdict, showOpen, showVerdict } from './operation.type.js';
import { SendFieldwork } from './send-fieldwork.service.js';

/** What phones send, and what of it somebody should look at. */
@Resolver(() => OpenOperation)
export class OperationResolver {
  constructor(private readonly sending: SendFieldwork) {}

  @Allow(Permission.RecordFieldwork)
  @Mutation(() => [OperationVerdict])
  async sendFieldwork(
    @Tx() tx: OrganizationTransaction,
    @Args('device', { type: () => DeviceInput }) device: DeviceInput,
    @Args('operations', { type: () => [OperationInput] }) sent: OperationInput[],
  ): Promise<OperationVerdict[]> {
    return (await this.sending.run(tx, device, sent)).map(showVerdict);
  }

  @Allow(Permission.DecideFindings)
  @Query(() => [OpenOperation])
  async openOperations(@Tx() tx: OrganizationTransaction): Promise<OpenOperation[]> {
    return (await operations.open(tx)).map(showOpen);
  }

  /** Somebody has looked at it: it is not shown again, and nothing of it is thrown away. */
  @Allow(Permission.DecideFindings)
  @Mutation(() => OpenOperation)
  async settleOperation(@Tx() tx: OrganizationTransaction, @Args('key', { type: () => ID }) key: string): Promise<OpenOperation> {
    const row = await operations.ofKey(tx, key);
    if (!row) throw platformProblems.notFound({ thing: 'operation', id: key });
    await operations.settle(tx, key);
    return showOpen(row);
  }

  @ResolveField(() => String, { nullable: true })
  async by(@Tx() tx: OrganizationTransaction, @Parent() { personId }: OpenOperation): Promise<string | null> {
    return personId ? personNameOfId.of(tx).load(personId) : null;
  }
}
