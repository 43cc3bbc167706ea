import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { organizations } from '../../../platform/identity/organizations/organization.repository.js';
import { Tx } from '../../../platform/identity/tx.js';
import { todayOf } from '../../../platform/jobs/clock.js';
import { Controller } from '../../portfolio/controllers/controller.type.js';
import { presentAndPlanned } from '../../settings/facts/present-and-planned.loader.js';
import { inferredSettings } from './inferred-settings.loader.js';
import { InferredSettings } from './inferred-settings.type.js';

/** What usage says of a controller whose settings nobody knows. */
@Resolver(() => Controller)
export class InferredSettingsResolver {
  /** null where settings are known, where its meter is not read by the hour or serves another controller too, and where nothing recurs */
  @ResolveField(() => InferredSettings, { nullable: true })
  async inferredSettings(@Tx() tx: OrganizationTransaction, @Parent() { id, propertyId }: Controller): Promise<InferredSettings | null> {
    const { present } = await presentAndPlanned.of(tx).load(id);
    if (present && present.state !== 'unknown') return null;
    const today = todayOf(await organizations.own(tx));
    return inferredSettings(tx, { controllerId: id, propertyId, today });
  }
}
