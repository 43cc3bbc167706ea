import { Args, ID, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { organizations } from '../../../platform/identity/organizations/organization.repository.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { nowOf } from '../../../platform/jobs/clock.js';
import { personNameOfId } from '../../../platform/records/person-name.loader.js';
import { devices } from './device.repository.js';
import { Device, showDevice } from './device.type.js';

const DAY_MS = 86_400_000;

/** A browser that was signed in once and holds nothing is no phone of the crews: after so long it leaves the list. [d] */
const LISTED_DAYS = 90;

/** The phones that have sent something, and what they said is still on them. */
@Resolver(() => Device)
export class DeviceResolver {
  @Allow(Permission.DecideFindings)
  @Query(() => [Device])
  async devices(@Tx() tx: OrganizationTransaction): Promise<Device[]> {
    const now = nowOf(await organizations.own(tx));
    return (await devices.all(tx, new Date(now.getTime() - LISTED_DAYS * DAY_MS))).map((row) => showDevice(row, now));
  }

  /** Takes a phone off the list, that was lost or given back; heard again it is there again. */
  @Allow(Permission.DecideFindings)
  @Mutation(() => [Device])
  async forgetDevice(@Tx() tx: OrganizationTransaction, @Args('id', { type: () => ID }) id: string): Promise<Device[]> {
    if (!(await devices.ofId(tx, id))) throw platformProblems.notFound({ thing: 'phone', id });
    await devices.forget(tx, id);
    return this.devices(tx);
  }

  @ResolveField(() => String, { nullable: true })
  async person(@Tx() tx: OrganizationTransaction, @Parent() { personId }: Device): Promise<string | null> {
    return personId ? personNameOfId.of(tx).load(personId) : null;
  }
}
