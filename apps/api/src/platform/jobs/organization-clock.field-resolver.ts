import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { DateScalar, DateTimeScalar } from '../graphql/scalars.js';
import { Organization } from '../identity/organizations/organization.type.js';
import { nowOf, todayOf } from './clock.js';

/** What the clock of the organization shows; a demonstration's stands still. */
@Resolver(() => Organization)
export class OrganizationClockFieldResolver {
  @ResolveField(() => DateScalar, { name: 'today' })
  today(@Parent() organization: Organization): string {
    return todayOf(organization);
  }

  @ResolveField(() => DateTimeScalar, { name: 'now' })
  now(@Parent() organization: Organization): Date {
    return nowOf(organization);
  }
}
