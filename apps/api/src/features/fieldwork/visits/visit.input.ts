import { ArgsType, Field, ID, InputType, Int } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';

/** An arrival, named by the phone. */
@InputType()
export class VisitInput {
  @Field(() => ID)
  deviceRecordId: string;

  @Field(() => ID)
  stopId: string;

  @Field(() => DateTimeScalar)
  arrivedAt: Date;
}

/** The end of a visit: when, what was done, what is left for another day. */
@ArgsType()
export class CloseVisitArgs {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => DateTimeScalar)
  closedAt: Date;

  @Field(() => String, { nullable: true })
  doneNote?: string | null;

  @Field(() => String, { nullable: true })
  leftNote?: string | null;
}

/** Something seen on a zone walk; said again of the same zone and kind, it replaces what was said. */
@InputType()
export class ZoneNoteInput {
  @Field(() => ID)
  visitId: string;

  @Field(() => ID, { nullable: true })
  zoneId?: string | null;

  @Field(() => String)
  kind: string;

  @Field(() => Int)
  count: number;

  @Field(() => String, { nullable: true })
  word?: string | null;

  @Field(() => Boolean, { nullable: true })
  repaired?: boolean | null;
}
