import { Field, Float, Int, ObjectType } from '@nestjs/graphql';
import type { KeptProgram } from './kept-program.js';

/** A station in a program. */
@ObjectType()
export class StationTime {
  @Field(() => Int)
  station: number;

  /** its total per start at 100 % */
  @Field(() => Float)
  minutes: number;

  @Field(() => Int, { nullable: true })
  cycles: number | null;

  @Field(() => Float, { nullable: true })
  soakMinutes: number | null;
}

/** A program of a controller. */
@ObjectType()
export class Program {
  @Field(() => String)
  name: string;

  /** `Mon Wed Fri`, `daily`, `odd`, `even` or `every 3 from 2026-06-01` */
  @Field(() => String)
  days: string;

  /** HH:MM */
  @Field(() => [String])
  starts: string[];

  @Field(() => Float, { nullable: true })
  adjustPercent: number | null;

  @Field(() => [StationTime])
  stations: StationTime[];
}

export const showProgram = (kept: KeptProgram): Program =>
  Object.assign(new Program(), { ...kept, stations: kept.stations.map((station) => Object.assign(new StationTime(), station)) });
