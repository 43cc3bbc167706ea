import { litresFrom } from '@rillbook/units/volume.js';
import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateScalar, DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { UsageDayRow } from './usage-day.entity.js';

/** A local day of a meter's feed. */
@ObjectType()
export class UsageDay {
  @Field(() => ID)
  meterId: string;

  @Field(() => DateScalar)
  day: string;

  @Field(() => DateTimeScalar)
  dayStart: Date;

  /** from the day's start [s] */
  @Field(() => [Int])
  startSeconds: number[];

  @Field(() => [Int])
  lengthSeconds: number[];

  @Field(() => [Float])
  litres: number[];

  @Field(() => Float)
  totalLitres: number;

  @Field(() => Float, { nullable: true })
  leastLPerMin: number | null;
}

export const showUsageDay = (row: Omit<UsageDayRow, 'organizationId'>): UsageDay =>
  Object.assign(new UsageDay(), {
    meterId: row.meterId,
    day: row.day,
    dayStart: row.dayStart,
    startSeconds: row.startSeconds,
    lengthSeconds: row.lengthSeconds,
    litres: row.volumes.map((volume) => litresFrom(volume, row.unit)),
    totalLitres: row.totalL,
    leastLPerMin: row.leastLPerMin,
  });
