import { Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { organizations } from '../../../platform/identity/organizations/organization.repository.js';
import { nowOf } from '../../../platform/jobs/clock.js';
import { personNameOfId } from '../../../platform/records/person-name.loader.js';
import { devices } from './device.repository.js';
import { Device, showDevice } from './device.type.js';

/** The phones that have sent something, and what they said is still on them. */
@Resolver(() => Device)
export class DeviceResolver {
  @Allow(Permission.DecideFindings)
  @Query(() => [Device])
  async devices(@Tx() tx: OrganizationTransaction): Promise<Device[]> {
    const now = nowOf(await organizations.own(tx));
    return (await devices.all(tx)).map((row) => showDevice(row, now));
  }

  @ResolveField(() => String, { nullable: true })
  async person(@Tx() tx: OrganizationTransaction, @Parent() { personId }: Device): Promise<string | null> {
    return personId ? personNameOfId.of(tx).load(personId) : null;
  }
}
