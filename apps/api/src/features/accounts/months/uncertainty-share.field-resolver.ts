import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Tx } from '../../../platform/identity/tx.js';
import { controllersOfProperty } from '../../portfolio/controllers/controllers-of-property.loader.js';
import { metersOfProperty } from '../../portfolio/meters/meters-of-property.loader.js';
import { zonesOfProperty } from '../../portfolio/zones/zones-of-property.loader.js';
import { UncertaintyShare } from './month-account.type.js';

/** Adds to an uncertain input what it is an input of, by name. */
@Resolver(() => UncertaintyShare)
export class UncertaintyShareResolver {
  /** the name of the zone, controller or meter; null for the weather */
  @ResolveField(() => String, { nullable: true })
  async subjectName(@Tx() tx: OrganizationTransaction, @Parent() { subjectId, propertyId }: UncertaintyShare): Promise<string | null> {
    if (subjectId === null) return null;
    const [zones, controllers, meters] = await Promise.all([
      zonesOfProperty.of(tx).load(propertyId),
      controllersOfProperty.of(tx).load(propertyId),
      metersOfProperty.of(tx).load(propertyId),
    ]);
    return [...zones, ...controllers, ...meters].find(({ id }) => id === subjectId)?.name ?? null;
  }
}
