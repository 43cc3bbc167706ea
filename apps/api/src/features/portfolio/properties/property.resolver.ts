import { Args, ID, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import { HIGHEST_ETAF } from '@rillbook/metering/volumes/ordinance-allowance.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { keptThingResolver } from '../../../platform/kept-things/kept-thing.resolver.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { above, between, judgeValues, name, oneOf, text, timeZone, twelve } from '../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { filled } from '../../../platform/records/filled.js';
import { requireInUse } from '../../../platform/records/require-in-use.js';
import { inScope } from './property-scope.service.js';
import { PropertyRow } from './property.entity.js';
import { PropertyInput } from './property.input.js';
import { properties } from './property.repository.js';
import { Property, showProperty } from './property.type.js';

const RULES = {
  name: name(),
  address: text,
  city: text,
  latitude: between(-90, 90, 'degrees'),
  longitude: between(-180, 180, 'degrees'),
  elevationM: between(-500, 9000, 'm'),
  timeZone,
  allowanceFrom: oneOf('ordinance', 'contract'),
  allowanceEtaf: above(0, HIGHEST_ETAF),
  allowanceLitresPerMonth: twelve(between(0, 1e10, 'L')),
  specialLandscapeAreaM2: between(0, 1e8, 'm²'),
  notes: text,
};

function judgePosition(input: PropertyInput): void {
  const given = [input.latitude, input.longitude].filter((value) => value !== null && value !== undefined);
  if (given.length === 1)
    throw platformProblems.valueRefused({
      field: input.latitude === null || input.latitude === undefined ? 'latitude' : 'longitude',
      found: null,
      expected: 'a latitude and a longitude, or neither',
    });
}

function judgeAllowance(input: PropertyInput): void {
  if (input.allowanceFrom === 'contract' && !input.allowanceLitresPerMonth)
    throw platformProblems.valueRefused({
      field: 'allowanceLitresPerMonth',
      found: null,
      expected: 'twelve numbers, January to December, where the allowance comes from a contract',
    });
}

const Kept = keptThingResolver({
  name: 'Property',
  row: PropertyRow,
  type: Property,
  input: PropertyInput,
  show: showProperty,
  keep: (input) =>
    filled<PropertyRow>(input, [
      'clientId',
      'name',
      'address',
      'city',
      'latitude',
      'longitude',
      'elevationM',
      'timeZone',
      'weatherStationId',
      'waterSupplierId',
      'allowanceFrom',
      'allowanceEtaf',
      'allowanceLitresPerMonth',
      'specialLandscapeAreaM2',
      'notes',
    ]),
  judge: async (tx, input) => {
    judgeValues(input, RULES);
    judgePosition(input);
    judgeAllowance(input);
    await requireInUse(tx, 'client', input.clientId);
    await requireInUse(tx, 'weather_station', input.weatherStationId);
    await requireInUse(tx, 'water_supplier', input.waterSupplierId);
  },
});

/** Properties: found, read, created, changed, retired. */
@Resolver(() => Property)
export class PropertyResolver extends Kept {
  @Allow(Permission.ReadProperty)
  @Query(() => [Property], { name: 'properties' })
  async found(
    @Tx() tx: OrganizationTransaction,
    @Args('text', { type: () => String, nullable: true }) words: string | null,
  ): Promise<Property[]> {
    return (await properties.found(tx, words ?? null)).map(showProperty);
  }

  @Allow(Permission.ReadProperty)
  @Query(() => Property, { name: 'property', nullable: true })
  async one(@Tx() tx: OrganizationTransaction, @Args('id', { type: () => ID }) id: string): Promise<Property | null> {
    const [row] = await properties.ofIds(tx, [...(await inScope(tx, [id]))]);
    return row ? showProperty(row) : null;
  }

  /** Gate codes and remarks are the company's own: a client does not see them. */
  @ResolveField(() => String, { nullable: true })
  notes(@Parent() property: Property, @Tx() tx: OrganizationTransaction): string | null {
    return tx.actor.role === 'client' ? null : property.notes;
  }
}
