import { Args, ID, Mutation, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { OpenOperation, showOpen } from '../operations/operation.type.js';
import { ChooseWord } from './choose-word.service.js';
import { TakeIn } from './take-in.service.js';

/** Which of two words stands, and what was refused after all. */
@Resolver(() => OpenOperation)
export class ChooseWordResolver {
  constructor(
    private readonly choosing: ChooseWord,
    private readonly taking: TakeIn,
  ) {}

  /** Does what was refused, as the one who asks; where it is refused again it says why. */
  @Allow(Permission.DecideFindings)
  @Mutation(() => OpenOperation)
  async takeInOperation(@Tx() tx: OrganizationTransaction, @Args('key', { type: () => ID }) key: string): Promise<OpenOperation> {
    return showOpen(await this.taking.run(tx, key));
  }

  /** Lets what the phone said stand ('sent'), or what somebody else said ('other'); it is then not shown again. */
  @Allow(Permission.DecideFindings)
  @Mutation(() => OpenOperation)
  async chooseWord(
    @Tx() tx: OrganizationTransaction,
    @Args('key', { type: () => ID }) key: string,
    @Args('word', { type: () => String }) word: string,
  ): Promise<OpenOperation> {
    return showOpen(await this.choosing.run(tx, key, word));
  }
}
