import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { Tx } from '../../../../platform/identity/tx.js';
import { Stop } from '../../routes/stop.type.js';
import { cautionsOfStop } from './caution.loader.js';

/** The cautions of a stop, as codes. */
@Resolver(() => Stop)
export class StopCautionsResolver {
  @ResolveField(() => [String])
  cautions(@Tx() tx: OrganizationTransaction, @Parent() stop: Stop): Promise<string[]> {
    return cautionsOfStop.of(tx).load(stop.id);
  }
}
