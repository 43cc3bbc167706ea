import { Field, ObjectType } from '@nestjs/graphql';

/** What a check says of one value of a day. */
@ObjectType()
export class WeatherMark {
  /** the value, by its field of the day */
  @Field(() => String)
  value: string;

  /** the check: range, step, persistence, clear-sky, dawn-humidity */
  @Field(() => String)
  mark: string;

  /** kept is shown only; doubted is used with less confidence; refused is not used */
  @Field(() => String)
  effect: string;

  /** a code for the words on a screen */
  @Field(() => String)
  reason: string;
}
