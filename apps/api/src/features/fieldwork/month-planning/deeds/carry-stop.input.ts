import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { DateScalar } from '../../../../platform/graphql/scalars.js';

/** Where a stop is carried to. */
@InputType()
export class CarryInput {
  @Field(() => ID)
  crewId: string;

  @Field(() => DateScalar)
  day: string;

  /** from 1; past the last is the last */
  @Field(() => Int)
  position: number;

  /** stays there when the month is planned again */
  @Field(() => Boolean)
  locked: boolean;
}
