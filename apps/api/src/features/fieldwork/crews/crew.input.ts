import { Field, Float, ID, InputType, Int } from '@nestjs/graphql';

/** What is said of a crew. What is left out stays as it is. */
@InputType()
export class CrewInput {
  @Field(() => String)
  name: string;

  @Field(() => [ID], { nullable: true })
  memberIds?: string[] | null;

  @Field(() => [String], { nullable: true })
  skills?: string[] | null;

  @Field(() => Float, { nullable: true })
  startLatitude?: number | null;

  @Field(() => Float, { nullable: true })
  startLongitude?: number | null;

  @Field(() => [Int], { nullable: true })
  workingDays?: number[] | null;

  @Field(() => Int, { nullable: true })
  dayStartsMinute?: number | null;

  @Field(() => Int, { nullable: true })
  dayEndsMinute?: number | null;

  @Field(() => Int, { nullable: true })
  breakMinutes?: number | null;
}
