import { Args, ID, Int, Mutation, Parent, Query, ResolveField, Resolver, createUnionType } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../platform/database/organization-transaction.js';
import { ChangedMeanwhile, changedMeanwhile } from '../../platform/graphql/outcomes.type.js';
import { Allow } from '../../platform/identity/allow.js';
import { Permission } from '../../platform/identity/permission.js';
import { Tx } from '../../platform/identity/tx.js';
import { VersionConflict } from '../../platform/records/kept-records.js';
import { propertyOfId } from '../portfolio/properties/property.loader.js';
import { inScope, requireProperty } from '../portfolio/properties/property-scope.service.js';
import { Property, showProperty } from '../portfolio/properties/property.type.js';
import { nameOfPerson } from './decided-by.js';
import type { FindingRow } from './finding.entity.js';
import { findingOfId } from './finding.loader.js';
import { findings } from './finding.repository.js';
import { Finding, showFinding } from './finding.type.js';
import { SettleFinding } from './settle-finding.service.js';

const FindingResult = createUnionType({
  name: 'FindingResult',
  types: () => [Finding, ChangedMeanwhile] as const,
  resolveType: (value: object) => value.constructor as typeof Finding,
});

const outcome = (result: FindingRow | VersionConflict): Finding | ChangedMeanwhile =>
  result instanceof VersionConflict ? changedMeanwhile(result) : showFinding(result);

/** Findings: the list to work through, and what is decided of each. */
@Resolver(() => Finding)
export class FindingResolver {
  constructor(private readonly settle: SettleFinding) {}

  @Allow(Permission.ReadFindings)
  @Query(() => [Finding], { name: 'findings' })
  async list(
    @Tx() tx: OrganizationTransaction,
    @Args('state', { type: () => [String], nullable: true }) states: string[] | null,
    @Args('kind', { type: () => String, nullable: true }) kind: string | null,
    @Args('propertyId', { type: () => ID, nullable: true }) propertyId: string | null,
  ): Promise<Finding[]> {
    const propertyIds = propertyId ? [propertyId] : null;
    return (await findings.list(tx, { states, kind, propertyIds })).map(showFinding);
  }

  @Allow(Permission.ReadProperty)
  @Query(() => Finding, { name: 'finding', nullable: true })
  async one(@Tx() tx: OrganizationTransaction, @Args('id', { type: () => ID }) id: string): Promise<Finding | null> {
    const row = await findingOfId.of(tx).load(id);
    if (!row || tx.actor.role === 'client' || !(await inScope(tx, [row.propertyId])).has(row.propertyId)) return null;
    return showFinding(row);
  }

  @Allow(Permission.DecideFindings)
  @Mutation(() => FindingResult)
  async dismissFinding(
    @Tx() tx: OrganizationTransaction,
    @Args('id', { type: () => ID }) id: string,
    @Args('version', { type: () => Int }) version: number,
    @Args('why') why: string,
  ): Promise<object> {
    return outcome(await this.settle.dismiss(tx, id, version, why));
  }

  @Allow(Permission.DecideFindings)
  @Mutation(() => FindingResult)
  async resolveFinding(
    @Tx() tx: OrganizationTransaction,
    @Args('id', { type: () => ID }) id: string,
    @Args('version', { type: () => Int }) version: number,
    @Args('with') how: string,
  ): Promise<object> {
    return outcome(await this.settle.resolve(tx, id, { with: how, version }));
  }

  @Allow(Permission.DecideFindings)
  @Mutation(() => FindingResult)
  async reopenFinding(
    @Tx() tx: OrganizationTransaction,
    @Args('id', { type: () => ID }) id: string,
    @Args('version', { type: () => Int }) version: number,
  ): Promise<object> {
    return outcome(await this.settle.reopen(tx, id, version));
  }

  @ResolveField(() => Property)
  async property(@Tx() tx: OrganizationTransaction, @Parent() finding: Finding): Promise<Property> {
    return showProperty((await propertyOfId.of(tx).load(finding.propertyId)) ?? (await requireProperty(tx, finding.propertyId)));
  }

  @ResolveField(() => String, { nullable: true })
  decidedBy(@Tx() tx: OrganizationTransaction, @Parent() finding: Finding): Promise<string | null> {
    return nameOfPerson(tx, finding.decidedById);
  }
}
