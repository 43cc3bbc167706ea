import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';

/** One way to water a zone whose plants do not fit together. */
@ObjectType()
export class CareChoice {
  /** `thirstiest`, `middle` or `modest` */
  @Field(() => String)
  choice: string;

  /** in the month */
  @Field(() => Float)
  neededLitres: number;

  /** for each start of the full program, in place of those planned; null where it does not water the zone */
  @Field(() => Float, { nullable: true })
  minutes: number | null;
}

/** A zone whose plants do not fit together, and what each choice would give it. */
@ObjectType()
export class ZoneChoices {
  @Field(() => ID)
  zoneId: string;

  @Field(() => Int)
  station: number;

  @Field(() => [CareChoice])
  choices: CareChoice[];
}
