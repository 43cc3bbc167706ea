import { Field, Float, ID, ObjectType } from '@nestjs/graphql';
import { DateScalar, MonthScalar } from '../../../platform/graphql/scalars.js';

/** Daily weather from a day on, without holes: null where a day's value is not known. */
@ObjectType()
export class WhatIfWeather {
  @Field(() => DateScalar)
  firstDay: string;

  @Field(() => [Float], { nullable: 'items' })
  etoMm: (number | null)[];

  @Field(() => [Float], { nullable: 'items' })
  rainMm: (number | null)[];
}

/** What the need of a zone depends on, as its accounts take it. */
@ObjectType()
export class WhatIfZone {
  @Field(() => ID)
  zoneId: string;

  @Field(() => Float)
  areaM2: number;

  @Field(() => Float)
  plantFactor: number;

  @Field(() => Float)
  density: number;

  @Field(() => Float)
  shade: number;

  @Field(() => Float)
  rawMm: number;

  @Field(() => Float)
  duLq: number;

  @Field(() => Float)
  leachingFraction: number;

  /** those of the inputs that nobody stated and that stand on a documented default */
  @Field(() => [String])
  assumed: string[];

  /** false where the zone is watered by hand or not metered: its need is no part of the account's */
  @Field(() => Boolean)
  isCounted: boolean;
}

/** Months in which the zones were the same: plants grow in, meters come and go. */
@ObjectType()
export class WhatIfStage {
  @Field(() => [MonthScalar])
  months: string[];

  @Field(() => [WhatIfZone])
  zones: WhatIfZone[];
}

/** What a year's need is computed from, for those who ask what it would be otherwise. */
@ObjectType()
export class WhatIf {
  /** the twelve months, oldest first, all of them over */
  @Field(() => [MonthScalar])
  months: string[];

  /** null where no day of the property's weather is known */
  @Field(() => WhatIfWeather, { nullable: true })
  weather: WhatIfWeather | null;

  /** oldest first; together they are the twelve months */
  @Field(() => [WhatIfStage])
  stages: WhatIfStage[];
}
