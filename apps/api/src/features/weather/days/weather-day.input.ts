import { Field, Float, ID, InputType } from '@nestjs/graphql';
import { DateScalar } from '../../../platform/graphql/scalars.js';

/** What is known of a day of weather: what was not measured is left out, never zero. */
@InputType()
export class WeatherDayInput {
  @Field(() => ID)
  stationId: string;

  @Field(() => DateScalar)
  day: string;

  @Field(() => Float, { nullable: true })
  tmaxC?: number | null;

  @Field(() => Float, { nullable: true })
  tminC?: number | null;

  @Field(() => Float, { nullable: true })
  rhMaxPercent?: number | null;

  @Field(() => Float, { nullable: true })
  rhMinPercent?: number | null;

  @Field(() => Float, { nullable: true })
  dewPointC?: number | null;

  @Field(() => Float, { nullable: true })
  windMPerS?: number | null;

  @Field(() => Float, { nullable: true })
  solarMjPerM2?: number | null;

  @Field(() => Float, { nullable: true })
  rainMm?: number | null;

  @Field(() => Float, { nullable: true })
  givenEtoMm?: number | null;
}
