import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { Tx } from '../../../../platform/identity/tx.js';
import { personNameOfId } from '../../../../platform/records/person-name.loader.js';
import { Visit } from '../visit.type.js';
import { ZoneTest, showZoneTest } from './zone-test.type.js';
import { testsOfVisit } from './zone-tests-of-visit.loader.js';

/** The tests that were made at a visit. */
@Resolver(() => Visit)
export class VisitTestsResolver {
  @ResolveField(() => [ZoneTest])
  async zoneTests(@Tx() tx: OrganizationTransaction, @Parent() visit: Visit): Promise<ZoneTest[]> {
    return (await testsOfVisit.of(tx).load(visit.id)).map(showZoneTest);
  }
}

/** Who made a test. */
@Resolver(() => ZoneTest)
export class ZoneTestFieldResolver {
  @ResolveField(() => String, { nullable: true })
  async by(@Tx() tx: OrganizationTransaction, @Parent() { personId }: ZoneTest): Promise<string | null> {
    return personId ? personNameOfId.of(tx).load(personId) : null;
  }
}
