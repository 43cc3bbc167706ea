import { Field, Float, ID, InputType, Int } from '@nestjs/graphql';

/** What is said of a controller. */
@InputType()
export class ControllerInput {
  @Field(() => ID)
  propertyId: string;

  @Field(() => String)
  name: string;

  @Field(() => Int)
  stations: number;

  @Field(() => Int, { nullable: true })
  programs?: number | null;

  @Field(() => Int, { nullable: true })
  startsPerProgram?: number | null;

  @Field(() => Float, { nullable: true })
  maxMinutes?: number | null;

  @Field(() => Float, { nullable: true })
  minuteStep?: number | null;

  @Field(() => String, { nullable: true })
  adjustScope?: string | null;

  @Field(() => Float, { nullable: true })
  adjustStepPercent?: number | null;

  @Field(() => Float, { nullable: true })
  maxAdjustPercent?: number | null;

  @Field(() => [Float], { nullable: true })
  monthlyAdjustPercent?: number[] | null;

  @Field(() => Int, { nullable: true })
  runsAtOnce?: number | null;

  @Field(() => Boolean, { nullable: true })
  cycleSoak?: boolean | null;

  @Field(() => Boolean, { nullable: true })
  masterValve?: boolean | null;

  @Field(() => Boolean, { nullable: true })
  rainSensor?: boolean | null;

  @Field(() => Float, { nullable: true })
  rainSensorMm?: number | null;

  @Field(() => Boolean, { nullable: true })
  flowSensor?: boolean | null;

  @Field(() => String, { nullable: true })
  location?: string | null;
}
