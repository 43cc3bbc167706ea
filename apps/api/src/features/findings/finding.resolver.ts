import { Args, ID, Int, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import { dismissReasons } from '@rillbook/metering/detection/life/kept-finding.js';
import type { OrganizationTransaction } from '../../platform/database/organization-transaction.js';
import { Allow } from '../../platform/identity/allow.js';
import { Permission } from '../../platform/identity/permission.js';
import { organizations } from '../../platform/identity/organizations/organization.repository.js';
import { Tx } from '../../platform/identity/tx.js';
import { todayOf } from '../../platform/jobs/clock.js';
import { propertyOfId } from '../portfolio/properties/property.loader.js';
import { inScope, requireProperty } from '../portfolio/properties/property-scope.service.js';
import { Property, showProperty } from '../portfolio/properties/property.type.js';
import { isSilenced } from './deciding/is-silenced.js';
import { nameOfPerson } from './deciding/decided-by.js';
import { FindingResult, outcome } from './finding-result.type.js';
import { findingOfId } from './finding.loader.js';
import { findings } from './finding.repository.js';
import { Finding, showFinding } from './finding.type.js';
import { SettleFinding } from './deciding/settle-finding.service.js';

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
    @Args('silenced', {
      type: () => Boolean,
      nullable: true,
      description: 'only those that are acknowledged and silent, or only the others',
    })
    silenced: boolean | null,
  ): Promise<Finding[]> {
    const rows = await findings.list(tx, { states, kind, propertyIds: propertyId ? [propertyId] : null });
    if (typeof silenced !== 'boolean') return rows.map(showFinding);
    const today = todayOf(await organizations.own(tx));
    return rows.filter((row) => isSilenced(row, today) === silenced).map(showFinding);
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
    @Args('reason', { type: () => String, nullable: true, description: `one of: ${dismissReasons.join(', ')}` }) reason: string | null,
  ): Promise<object> {
    return outcome(await this.settle.dismiss(tx, id, version, { why, reason: reason ?? 'other' }));
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

  /** acknowledged, and silent today: until a date, or until it clears */
  @ResolveField(() => Boolean)
  async isSilenced(@Tx() tx: OrganizationTransaction, @Parent() finding: Finding): Promise<boolean> {
    return finding.acknowledgedAt !== null && isSilenced(finding, todayOf(await organizations.own(tx)));
  }

  @ResolveField(() => String, { nullable: true })
  acknowledgedBy(@Tx() tx: OrganizationTransaction, @Parent() finding: Finding): Promise<string | null> {
    return nameOfPerson(tx, finding.acknowledgedById);
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
