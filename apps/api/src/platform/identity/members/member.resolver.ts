import { Args, ID, Int, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../database/organization-transaction.js';
import { RoleName } from '../../graphql/choices.type.js';
import { Allow } from '../allow.js';
import { Permission } from '../permission.js';
import { Tx } from '../tx.js';
import { ChangeMember } from './change-member.service.js';
import { members } from './member.repository.js';
import { Member, showMember } from './member.type.js';
import { RetireMember } from './retire-member.service.js';

/** The members of the organization. */
@Resolver(() => Member)
export class MemberResolver {
  constructor(
    private readonly changeMember: ChangeMember,
    private readonly retireMember: RetireMember,
  ) {}

  @Allow(Permission.ManageMembers)
  @Query(() => [Member], { name: 'members' })
  async members(@Tx() tx: OrganizationTransaction): Promise<Member[]> {
    return (await members.inUse(tx)).map(showMember);
  }

  @Allow(Permission.ManageMembers)
  @Mutation(() => Member, { name: 'changeMember' })
  async change(
    @Tx() tx: OrganizationTransaction,
    @Args('id', { type: () => ID }) id: string,
    @Args('version', { type: () => Int }) version: number,
    @Args('role', { type: () => RoleName }) role: RoleName,
    @Args('clientId', { type: () => ID, nullable: true }) clientId: string | null,
  ): Promise<Member> {
    return showMember(await this.changeMember.run(tx, id, version, { deed: 'change', role, clientId: clientId ?? null, retiredAt: null }));
  }

  @Allow(Permission.ManageMembers)
  @Mutation(() => Member, { name: 'retireMember' })
  async retire(
    @Tx() tx: OrganizationTransaction,
    @Args('id', { type: () => ID }) id: string,
    @Args('version', { type: () => Int }) version: number,
  ): Promise<Member> {
    return showMember(await this.retireMember.run(tx, id, version));
  }
}
