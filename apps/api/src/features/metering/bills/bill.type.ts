import { Field, Float, ID, ObjectType } from '@nestjs/graphql';
import { DateScalar } from '../../../platform/graphql/scalars.js';
import type { BillRow } from './bill.entity.js';

/** What a supplier billed for a meter. */
@ObjectType()
export class Bill {
  @Field(() => ID)
  id: string;

  @Field(() => ID)
  meterId: string;

  @Field(() => DateScalar)
  startOn: string;

  /** the first day that is not billed */
  @Field(() => DateScalar)
  endOn: string;

  @Field(() => Float)
  volume: number;

  @Field(() => String)
  unit: string;

  @Field(() => Float)
  litres: number;

  @Field(() => Float, { nullable: true })
  amount: number | null;
}

export const showBill = (row: BillRow): Bill =>
  Object.assign(new Bill(), {
    id: row.id,
    meterId: row.meterId,
    startOn: row.startOn,
    endOn: row.endOn,
    volume: row.volume,
    unit: row.unit,
    litres: row.litres,
    amount: row.amount,
  });
