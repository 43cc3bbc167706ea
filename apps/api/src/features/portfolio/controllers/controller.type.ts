import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { ControllerRow } from './controller.entity.js';

/** The irrigation timer of a property, whoever made it. */
@ObjectType()
export class Controller {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => DateTimeScalar, { nullable: true })
  retiredAt: Date | null;

  @Field(() => ID)
  propertyId: string;

  @Field(() => String)
  name: string;

  /** how many it has */
  @Field(() => Int)
  stations: number;

  /** how many it holds */
  @Field(() => Int, { nullable: true })
  programs: number | null;

  @Field(() => Int, { nullable: true })
  startsPerProgram: number | null;

  @Field(() => Float, { nullable: true })
  maxMinutes: number | null;

  /** run times are set in steps of this [min] */
  @Field(() => Float, { nullable: true })
  minuteStep: number | null;

  /** what its percent adjustment holds for */
  @Field(() => String, { nullable: true })
  adjustScope: string | null;

  @Field(() => Float, { nullable: true })
  adjustStepPercent: number | null;

  @Field(() => Float, { nullable: true })
  maxAdjustPercent: number | null;

  /** January to December, of timers that hold them [%] */
  @Field(() => [Float], { nullable: true })
  monthlyAdjustPercent: number[] | null;

  /** how many programs run side by side */
  @Field(() => Int, { nullable: true })
  runsAtOnce: number | null;

  @Field(() => Boolean, { nullable: true })
  cycleSoak: boolean | null;

  @Field(() => Boolean, { nullable: true })
  masterValve: boolean | null;

  @Field(() => Boolean, { nullable: true })
  rainSensor: boolean | null;

  @Field(() => Float, { nullable: true })
  rainSensorMm: number | null;

  @Field(() => Boolean, { nullable: true })
  flowSensor: boolean | null;

  @Field(() => String, { nullable: true })
  location: string | null;
}

export const showController = (row: ControllerRow): Controller => Object.assign(new Controller(), row);
