import { Args, ID, Int, Query, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { WateringRuleInput } from '../../portfolio/suppliers/rules/bring-in-rule.service.js';
import { RuleChange } from './rule-change.type.js';
import { WhatARuleChanges } from './what-a-rule-changes.service.js';

/** What a new rule would change. */
@Resolver(() => RuleChange)
export class RuleChangeResolver {
  constructor(private readonly whatChanges: WhatARuleChanges) {}

  /** of the supplier's properties, by name: those from `skip` on, `first` of them */
  @Allow(Permission.WritePortfolio)
  @Query(() => RuleChange)
  ruleChange(
    @Tx() tx: OrganizationTransaction,
    @Args('rule', { type: () => WateringRuleInput }) rule: WateringRuleInput,
    @Args('replaces', { type: () => ID, nullable: true }) replaces: string | null | undefined,
    @Args('skip', { type: () => Int, defaultValue: 0 }) skip: number,
    @Args('first', { type: () => Int, defaultValue: 10 }) first: number,
  ): Promise<RuleChange> {
    return this.whatChanges.run(tx, rule, replaces ?? null, { skip, first });
  }
}
