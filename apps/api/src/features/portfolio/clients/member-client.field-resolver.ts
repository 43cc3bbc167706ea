import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Member } from '../../../platform/identity/members/member.type.js';
import { Tx } from '../../../platform/identity/tx.js';
import { clientOfId } from './client.loader.js';
import { Client, showClient } from './client.type.js';

/** The client whom a member of role client belongs to. */
@Resolver(() => Member)
export class MemberClientFieldResolver {
  @ResolveField(() => Client, { name: 'client', nullable: true })
  async client(@Parent() member: Member, @Tx() tx: OrganizationTransaction): Promise<Client | null> {
    const row = member.clientId ? await clientOfId.of(tx).load(member.clientId) : null;
    return row && showClient(row);
  }
}
