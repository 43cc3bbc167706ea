import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Tx } from '../../../platform/identity/tx.js';
import { Property } from '../properties/property.type.js';
import { waterSupplierOfId } from './water-supplier.loader.js';
import { showWaterSupplier, WaterSupplier } from './water-supplier.type.js';

/** Adds to a property who sells its water. */
@Resolver(() => Property)
export class PropertyWaterSupplierResolver {
  @ResolveField(() => WaterSupplier, { nullable: true })
  async waterSupplier(@Parent() property: Property, @Tx() tx: OrganizationTransaction): Promise<WaterSupplier | null> {
    const row = property.waterSupplierId ? await waterSupplierOfId.of(tx).load(property.waterSupplierId) : null;
    return row && showWaterSupplier(row);
  }
}
