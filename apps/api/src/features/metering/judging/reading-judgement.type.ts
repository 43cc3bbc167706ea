import { Field, Float, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { JudgedRegister } from '@rillbook/metering/intervals/register-history.js';

/** Whether a register can be right, told before it is saved. */
@ObjectType()
export class ReadingJudgement {
  /** the same codes as of a reading */
  @Field(() => String)
  judgement: string;

  @Field(() => Float, { nullable: true })
  litresSinceLast: number | null;

  @Field(() => DateTimeScalar, { nullable: true })
  lastReadAt: Date | null;

  @Field(() => Float, { nullable: true })
  lastRegister: number | null;

  /** what was probably meant */
  @Field(() => Float, { nullable: true })
  likelyRegister: number | null;
}

export const showJudgement = (judged: JudgedRegister): ReadingJudgement => Object.assign(new ReadingJudgement(), judged);
