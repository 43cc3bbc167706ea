import { Field, Float, ID, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../../platform/graphql/scalars.js';
import type { ZoneTestRow } from './zone-test.entity.js';

/** A test of a zone: its flow by the meter, or how evenly it waters by cans. */
@ObjectType()
export class ZoneTest {
  @Field(() => ID)
  id: string;

  @Field(() => ID)
  zoneId: string;

  /** flow or catch */
  @Field(() => String)
  kind: string;

  @Field(() => DateTimeScalar)
  testedAt: Date;

  @Field(() => Float, { nullable: true })
  minutes: number | null;

  @Field(() => ID, { nullable: true })
  meterId: string | null;

  @Field(() => Float, { nullable: true })
  registerBefore: number | null;

  @Field(() => Float, { nullable: true })
  registerAfter: number | null;

  @Field(() => Float, { nullable: true })
  flowLPerMin: number | null;

  /** from the register's resolution; null where nobody has said it */
  @Field(() => Float, { nullable: true })
  flowSdLPerMin: number | null;

  @Field(() => [Float])
  catchesMl: number[];

  /** the lowest quarter's share of the mean [–] */
  @Field(() => Float, { nullable: true })
  duLq: number | null;

  @Field(() => Float, { nullable: true })
  rateMmPerH: number | null;

  @Field(() => String, { nullable: true })
  word: string | null;

  /** whether it told enough to stand on the zone's record */
  @Field(() => Boolean)
  onRecord: boolean;

  personId: string | null;
}

export function showZoneTest(row: ZoneTestRow): ZoneTest {
  const { organizationId: _, propertyId: __, visitId: ___, mouthM2: ____, receivedAt: _____, ...shown } = row;
  return Object.assign(new ZoneTest(), shown);
}
