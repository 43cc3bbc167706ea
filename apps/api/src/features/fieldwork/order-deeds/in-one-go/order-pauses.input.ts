import { Field, ID, InputType } from '@nestjs/graphql';
import { DateScalar, DateTimeScalar } from '../../../../platform/graphql/scalars.js';

/** A controller, and when its pause ends. */
@InputType()
export class PauseInput {
  @Field(() => ID)
  controllerId: string;

  @Field(() => DateTimeScalar)
  until: Date;
}

/** Pauses to be set by hand, and by whom. */
@InputType()
export class OrderPausesInput {
  @Field(() => [PauseInput])
  pauses: PauseInput[];

  @Field(() => ID, { nullable: true })
  crewId?: string | null;

  @Field(() => DateScalar, { nullable: true })
  day?: string | null;
}
