import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Tx } from '../../../platform/identity/tx.js';
import { Meter } from '../../portfolio/meters/meter.type.js';
import { Bill, showBill } from './bill.type.js';
import { billsOfMeter } from './bills-of-meter.loader.js';

/** A meter's bills, the newest first. */
@Resolver(() => Meter)
export class MeterBillsResolver {
  @ResolveField(() => [Bill])
  async bills(@Tx() tx: OrganizationTransaction, @Parent() meter: Meter): Promise<Bill[]> {
    return (await billsOfMeter.of(tx).load(meter.id)).map(showBill);
  }
}
