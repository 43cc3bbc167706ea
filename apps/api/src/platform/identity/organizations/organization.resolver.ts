import { Args, Int, Mutation, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../database/organization-transaction.js';
import { Allow } from '../allow.js';
import { Permission } from '../permission.js';
import { Tx } from '../tx.js';
import { ChangeOrganization } from './change-organization.service.js';
import { OrganizationInput } from './organization.input.js';
import { Organization, showOrganization } from './organization.type.js';

/** The organization itself. */
@Resolver(() => Organization)
export class OrganizationResolver {
  constructor(private readonly changeOrganization: ChangeOrganization) {}

  @Allow(Permission.ManageOrganization)
  @Mutation(() => Organization, { name: 'changeOrganization' })
  async change(
    @Tx() tx: OrganizationTransaction,
    @Args('version', { type: () => Int }) version: number,
    @Args('input', { type: () => OrganizationInput }) input: OrganizationInput,
  ): Promise<Organization> {
    return showOrganization(await this.changeOrganization.run(tx, version, input));
  }
}
