import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Tx } from '../../../platform/identity/tx.js';
import { Zone } from '../zones/zone.type.js';
import { Planting, showPlanting } from './planting.type.js';
import { plantingsOfZone } from './plantings-of-zone.loader.js';

/** Adds to a zone its plantings in use. */
@Resolver(() => Zone)
export class ZonePlantingsResolver {
  @ResolveField(() => [Planting])
  async plantings(@Parent() zone: Zone, @Tx() tx: OrganizationTransaction): Promise<Planting[]> {
    return (await plantingsOfZone.of(tx).load(zone.id)).map(showPlanting);
  }
}
