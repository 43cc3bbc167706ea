import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Tx } from '../../../platform/identity/tx.js';
import { propertyOfId } from '../../portfolio/properties/property.loader.js';
import { Property, showProperty } from '../../portfolio/properties/property.type.js';
import { deviceNameOfId } from '../devices/device-name.loader.js';
import { OpenOperation } from '../operations/operation.type.js';
import { phoneName } from '../operations/whose-phone.js';
import { subjectOfOperation } from './subject-of-operation.loader.js';

/** What an operation speaks of. */
@Resolver(() => OpenOperation)
export class OpenOperationFieldResolver {
  @ResolveField(() => Property, { nullable: true })
  async property(@Tx() tx: OrganizationTransaction, @Parent() { body }: OpenOperation): Promise<Property | null> {
    const subject = await subjectOfOperation.of(tx).load(body);
    const row = subject && (await propertyOfId.of(tx).load(subject.propertyId));
    return row && showProperty(row);
  }

  /** the phone on which it was saved: what it calls itself, else the end of its id */
  @ResolveField(() => String)
  async phone(@Tx() tx: OrganizationTransaction, @Parent() { deviceId }: OpenOperation): Promise<string> {
    return phoneName(deviceId, await deviceNameOfId.of(tx).load(deviceId));
  }

  /** the zone's, meter's or controller's name */
  @ResolveField(() => String, { nullable: true })
  async subject(@Tx() tx: OrganizationTransaction, @Parent() { body }: OpenOperation): Promise<string | null> {
    return (await subjectOfOperation.of(tx).load(body))?.name ?? null;
  }
}
