import { Query, Resolver } from '@nestjs/graphql';
import { precisionByKind } from '@rillbook/metering/detection/life/precision.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { findings } from '../finding.repository.js';
import { FindingPrecision } from './precision.type.js';

/** The organization's own precision by kind. */
@Resolver()
export class PrecisionResolver {
  /** the most decided first; kinds of which none is decided are not there */
  @Allow(Permission.ReadFindings)
  @Query(() => [FindingPrecision])
  async findingPrecision(@Tx() tx: OrganizationTransaction): Promise<FindingPrecision[]> {
    return precisionByKind(await findings.decided(tx)).map((each) => Object.assign(new FindingPrecision(), each));
  }
}
