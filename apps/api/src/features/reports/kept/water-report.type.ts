import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateScalar, DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { WaterReportRow } from './water-report.entity.js';

/** What a client gets for a month, a quarter or a year, of one property or of all. */
@ObjectType()
export class WaterReport {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => DateTimeScalar, { nullable: true })
  retiredAt: Date | null;

  @Field(() => ID)
  clientId: string;

  /** null for all of the client's properties */
  @Field(() => ID, { nullable: true })
  propertyId: string | null;

  @Field(() => DateScalar)
  fromOn: string;

  @Field(() => DateScalar)
  untilOn: string;

  /** draft, approved, sent */
  @Field(() => String)
  state: string;

  @Field(() => String, { nullable: true })
  note: string | null;

  @Field(() => DateTimeScalar, { nullable: true })
  approvedAt: Date | null;

  /** not before this instant */
  @Field(() => DateTimeScalar, { nullable: true })
  sendAt: Date | null;

  @Field(() => DateTimeScalar, { nullable: true })
  sentAt: Date | null;
}

export function showWaterReport(row: WaterReportRow): WaterReport {
  const { organizationId: _, typed: __, approvedBy: ___, ...shown } = row;
  return Object.assign(new WaterReport(), shown);
}
