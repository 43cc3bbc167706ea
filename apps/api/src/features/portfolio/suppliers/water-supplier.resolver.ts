import { Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { keptThingResolver } from '../../../platform/kept-things/kept-thing.resolver.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { judgeValues, name } from '../../../platform/problems/judge-values.js';
import { filled } from '../../../platform/records/filled.js';
import { propertiesThatNeed } from '../properties/properties-that-need.service.js';
import { RateTier, showRateTier } from './rates/rate-tier.type.js';
import { rateTiersOfSupplier } from './rates/rate-tiers.loader.js';
import { showWateringRule, WateringRule } from './rules/watering-rule.type.js';
import { wateringRulesOfSupplier } from './rules/watering-rules.loader.js';
import { WaterSupplierRow } from './water-supplier.entity.js';
import { WaterSupplierInput } from './water-supplier.input.js';
import { waterSuppliers } from './water-supplier.repository.js';
import { showWaterSupplier, WaterSupplier } from './water-supplier.type.js';

const Kept = keptThingResolver({
  name: 'WaterSupplier',
  row: WaterSupplierRow,
  type: WaterSupplier,
  input: WaterSupplierInput,
  show: showWaterSupplier,
  keep: (input) => filled<WaterSupplierRow>(input, ['name']),
  judge: async (_, input) => judgeValues(input, { name: name() }),
  needs: (tx, id) => propertiesThatNeed(tx, 'waterSupplierId', id),
});

/** Water suppliers with their rules and rates: read, created, changed, retired. */
@Resolver(() => WaterSupplier)
export class WaterSupplierResolver extends Kept {
  @Allow(Permission.ReadPortfolio)
  @Query(() => [WaterSupplier], { name: 'waterSuppliers' })
  async all(@Tx() tx: OrganizationTransaction): Promise<WaterSupplier[]> {
    return (await waterSuppliers.inUse(tx)).map(showWaterSupplier);
  }

  @ResolveField(() => [WateringRule])
  async rules(@Parent() supplier: WaterSupplier, @Tx() tx: OrganizationTransaction): Promise<WateringRule[]> {
    return (await wateringRulesOfSupplier.of(tx).load(supplier.id)).map(showWateringRule);
  }

  @ResolveField(() => [RateTier])
  async rateTiers(@Parent() supplier: WaterSupplier, @Tx() tx: OrganizationTransaction): Promise<RateTier[]> {
    return (await rateTiersOfSupplier.of(tx).load(supplier.id)).map(showRateTier);
  }
}
