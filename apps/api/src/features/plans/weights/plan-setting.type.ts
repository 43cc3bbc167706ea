import { Field, Float, InputType, Int, ObjectType } from '@nestjs/graphql';

/** What programs are planned by; version 0: nobody has said anything, these are the product's own. */
@ObjectType()
export class PlanSetting {
  @Field(() => Int)
  version: number;

  /** local time HH:MM */
  @Field(() => String)
  waterFrom: string;

  @Field(() => String)
  waterUntil: string;

  /** price of a litre that plants go without */
  @Field(() => Float)
  thirst: number;

  /** price of a litre that does not reach roots */
  @Field(() => Float)
  waste: number;

  /** litres of waste that a key press is worth */
  @Field(() => Float)
  keyPress: number;

  /** litres of waste that a watering of one zone is worth */
  @Field(() => Float)
  watering: number;
}

/** What is said of them. */
@InputType()
export class PlanSettingInput {
  @Field(() => String)
  waterFrom: string;

  @Field(() => String)
  waterUntil: string;

  @Field(() => Float)
  thirst: number;

  @Field(() => Float)
  waste: number;

  @Field(() => Float)
  keyPress: number;

  @Field(() => Float)
  watering: number;
}
