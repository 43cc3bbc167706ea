import { Float, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../platform/database/organization-transaction.js';
import { Permission, roleIncludes } from '../../platform/identity/permission.js';
import { Tx } from '../../platform/identity/tx.js';
import { Reading } from '../metering/readings/reading.type.js';
import { Property } from '../portfolio/properties/property.type.js';
import { findingsOfProperty, findingsOfReading } from './finding.loader.js';
import { Finding, showFinding } from './finding.type.js';

/** A property's findings. Clients see the reports, not the office's list. */
@Resolver(() => Property)
export class PropertyFindingsResolver {
  @ResolveField(() => [Finding])
  async findings(@Tx() tx: OrganizationTransaction, @Parent() property: Property): Promise<Finding[]> {
    if (tx.actor.role === 'client') return [];
    return (await findingsOfProperty.of(tx).load(property.id)).map(showFinding);
  }
}

/** What a finding costs is for those who read findings; a crew is told what to see to. */
@Resolver(() => Finding)
export class FindingMoneyResolver {
  @ResolveField(() => Float, { nullable: true })
  money(@Tx() tx: OrganizationTransaction, @Parent() { money }: Finding): number | null {
    return roleIncludes(tx.actor.role, Permission.ReadFindings) ? money : null;
  }
}

/** What is found of a reading. */
@Resolver(() => Reading)
export class ReadingFindingsResolver {
  @ResolveField(() => [Finding])
  async findings(@Tx() tx: OrganizationTransaction, @Parent() reading: Reading): Promise<Finding[]> {
    if (tx.actor.role === 'client') return [];
    return (await findingsOfReading.of(tx).load(reading.id)).map(showFinding);
  }
}
