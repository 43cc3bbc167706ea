import { Args, createUnionType, ID, Int, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { ChangedMeanwhile, changedMeanwhile } from '../../../../platform/graphql/outcomes.type.js';
import { Allow } from '../../../../platform/identity/allow.js';
import { Permission } from '../../../../platform/identity/permission.js';
import { Tx } from '../../../../platform/identity/tx.js';
import { VersionConflict } from '../../../../platform/records/kept-records.js';
import { Property } from '../../../portfolio/properties/property.type.js';
import { SetVisitTerms } from './set-visit-terms.service.js';
import { VisitTermsInput } from './visit-terms.input.js';
import { visitTermsOfProperty } from './visit-terms.loader.js';
import { showVisitTerms, VisitTerms } from './visit-terms.type.js';

const VisitTermsResult = createUnionType({
  name: 'VisitTermsResult',
  types: () => [VisitTerms, ChangedMeanwhile] as const,
  resolveType: (value: object) => value.constructor as typeof VisitTerms,
});

/** How often a property is visited, and when it may be. */
@Resolver(() => Property)
export class VisitTermsResolver {
  constructor(private readonly set: SetVisitTerms) {}

  @Allow(Permission.WritePortfolio)
  @Mutation(() => VisitTermsResult)
  async setVisitTerms(
    @Tx() tx: OrganizationTransaction,
    @Args('propertyId', { type: () => ID }) propertyId: string,
    @Args('version', { type: () => Int, nullable: true }) version: number | null,
    @Args('input', { type: () => VisitTermsInput }) input: VisitTermsInput,
  ): Promise<VisitTerms | ChangedMeanwhile> {
    const kept = await this.set.run(tx, propertyId, version, input);
    return kept instanceof VersionConflict ? changedMeanwhile(kept) : showVisitTerms(kept);
  }

  @ResolveField(() => VisitTerms, { nullable: true })
  async visitTerms(@Tx() tx: OrganizationTransaction, @Parent() property: Property): Promise<VisitTerms | null> {
    const row = await visitTermsOfProperty.of(tx).load(property.id);
    return row && showVisitTerms(row);
  }
}
