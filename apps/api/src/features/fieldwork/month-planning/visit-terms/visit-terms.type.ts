import { Field, Int, ObjectType } from '@nestjs/graphql';
import type { VisitTermsRow } from './visit-terms.entity.js';

/** Hours of a property: when its gate is open, or when nobody may work there. Minutes since midnight. */
@ObjectType()
export class VisitHoursShown {
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
@ObjectType()
export class VisitTerms {
  @Field(() => Int)
  version: number;

  @Field(() => Int, { nullable: true })
  everyDays: number | null;

  @Field(() => Int, { nullable: true })
  visitMinutes: number | null;

  @Field(() => [String])
  skills: string[];

  @Field(() => [VisitHoursShown])
  hours: VisitHoursShown[];
}

export const showVisitTerms = ({ version, everyDays, visitMinutes, skills, hours }: VisitTermsRow): VisitTerms =>
  Object.assign(new VisitTerms(), { version, everyDays, visitMinutes, skills, hours });
