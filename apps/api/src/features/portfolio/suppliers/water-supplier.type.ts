import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { WaterSupplierRow } from './water-supplier.entity.js';

/** Who sells the water, with its rules and rates. */
@ObjectType()
export class WaterSupplier {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => DateTimeScalar, { nullable: true })
  retiredAt: Date | null;

  @Field(() => String)
  name: string;
}

export const showWaterSupplier = (row: WaterSupplierRow): WaterSupplier => Object.assign(new WaterSupplier(), row);
