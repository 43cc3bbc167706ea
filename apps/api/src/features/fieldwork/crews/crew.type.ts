import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { CrewRow } from './crew.entity.js';

/** Those who go together. */
@ObjectType()
export class Crew {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => DateTimeScalar, { nullable: true })
  retiredAt: Date | null;

  @Field(() => String)
  name: string;

  /** what somebody of the crew is able to do, in the office's own words */
  @Field(() => [String])
  skills: string[];

  @Field(() => Float, { nullable: true })
  startLatitude: number | null;

  @Field(() => Float, { nullable: true })
  startLongitude: number | null;

  /** Monday 1 to Sunday 7 */
  @Field(() => [Int])
  workingDays: number[];

  /** minutes since midnight */
  @Field(() => Int)
  dayStartsMinute: number;

  @Field(() => Int)
  dayEndsMinute: number;

  @Field(() => Int)
  breakMinutes: number;
}

export const showCrew = (row: CrewRow): Crew =>
  Object.assign(new Crew(), {
    id: row.id,
    version: row.version,
    retiredAt: row.retiredAt,
    name: row.name,
    skills: row.skills,
    startLatitude: row.startLatitude,
    startLongitude: row.startLongitude,
    workingDays: row.workingDays,
    dayStartsMinute: row.dayStartsMinute,
    dayEndsMinute: row.dayEndsMinute,
    breakMinutes: row.breakMinutes,
  });
