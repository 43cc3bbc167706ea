import { Field, Float, InputType, Int } from '@nestjs/graphql';

/** A station in a program. */
@InputType()
export class StationTimeInput {
  @Field(() => Int)
  station: number;

  /** its total per start at 100 % */
  @Field(() => Float)
  minutes: number;

  /** how many parts the minutes are given in */
  @Field(() => Int, { nullable: true })
  cycles?: number | null;

  @Field(() => Float, { nullable: true })
  soakMinutes?: number | null;
}

/** A program of a controller. */
@InputType()
export class ProgramInput {
  @Field(() => String)
  name: string;

  /** `Mon Wed Fri`, `daily`, `odd`, `even` or `every 3 from 2026-06-01` */
  @Field(() => String)
  days: string;

  /** HH:MM */
  @Field(() => [String])
  starts: string[];

  @Field(() => Float, { nullable: true })
  adjustPercent?: number | null;

  @Field(() => [StationTimeInput])
  stations: StationTimeInput[];
}
