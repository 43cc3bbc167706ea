import { Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { keptThingResolver } from '../../../platform/kept-things/kept-thing.resolver.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import type { MemberRow } from '../../../platform/identity/members/member.entity.js';
import { Member, showMember } from '../../../platform/identity/members/member.type.js';
import { memberOfId } from '../../../platform/identity/members/member.loader.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { memberIdsOfCrew } from './crew-member.loader.js';
import { crewMembers } from './crew-member.repository.js';
import { crewsInScope } from './crew-scope.js';
import { CrewRow } from './crew.entity.js';
import { judgeCrew, crewValues } from './crew-values.js';
import { CrewInput } from './crew.input.js';
import { crews } from './crew.repository.js';
import { Crew, showCrew } from './crew.type.js';

const Kept = keptThingResolver({
  name: 'Crew',
  row: CrewRow,
  type: Crew,
  input: CrewInput,
  show: showCrew,
  keep: crewValues,
  judge: async (tx, input) => {
    judgeCrew(input);
    const able = new Set(await crewMembers.able(tx, (input.memberIds ?? []).filter(isUuid)));
    const other = (input.memberIds ?? []).find((id) => !able.has(id));
    if (other)
      throw platformProblems.valueRefused({ field: 'memberIds', found: other, expected: 'members in use whose role is not client' });
  },
  needs: async (tx, id) => {
    const count = await crews.workGivenOut(tx, id);
    return count ? { by: 'work order', count } : null;
  },
  then: async (tx, row, input) => {
    if (input.memberIds) await crewMembers.replace(tx, row.id, [...new Set(input.memberIds)]);
  },
});

/** Crews: read, created, changed, retired. */
@Resolver(() => Crew)
export class CrewResolver extends Kept {
  @Allow(Permission.ReadRoutes)
  @Query(() => [Crew], { name: 'crews' })
  async all(@Tx() tx: OrganizationTransaction): Promise<Crew[]> {
    return (await crews.inUse(tx, await crewsInScope(tx))).map(showCrew);
  }

  @ResolveField(() => [Member])
  async members(@Tx() tx: OrganizationTransaction, @Parent() crew: Crew): Promise<Member[]> {
    const ids = await memberIdsOfCrew.of(tx).load(crew.id);
    const rows = await memberOfId.of(tx).loadMany([...ids]);
    return rows.filter((row) => row !== null && !(row instanceof Error) && !row.retiredAt).map((row) => showMember(row as MemberRow));
  }
}
