import { Field, InputType, Int } from '@nestjs/graphql';

/** Hours of a property: when its gate is open, or when nobody may work there. */
@InputType()
export class VisitHoursInput {
  /** open or closed */
  @Field(() => String)
  kind: string;

  /** Monday 1 to Sunday 7 */
  @Field(() => [Int])
  weekdays: number[];

  @Field(() => Int)
  fromMinute: number;

  @Field(() => Int)
  untilMinute: number;
}

/** How often a property is visited, and when it may be. */
@InputType()
export class VisitTermsInput {
  @Field(() => Int, { nullable: true })
  everyDays?: number | null;

  @Field(() => Int, { nullable: true })
  visitMinutes?: number | null;

  @Field(() => [String], { nullable: true })
  skills?: string[] | null;

  @Field(() => [VisitHoursInput], { nullable: true })
  hours?: VisitHoursInput[] | null;
}
