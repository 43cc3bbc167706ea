import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateScalar, DateTimeScalar } from '../../../platform/graphql/scalars.js';
import { Controller } from '../../portfolio/controllers/controller.type.js';
import { Property } from '../../portfolio/properties/property.type.js';

/** A controller that can be paused after rain. */
@ObjectType()
export class ControllerToPause {
  @Field(() => ID)
  controllerId: string;

  @Field(() => Property)
  property: Property;

  @Field(() => Controller)
  controller: Controller;

  /** rain of the last few days at the property's station [mm] */
  @Field(() => Float)
  rainMm: number;

  @Field(() => DateScalar)
  lastRainOn: string;

  /** the first local day on which it waters again */
  @Field(() => DateScalar)
  waterAgainOn: string;

  /** when the pause ends: as that day begins */
  @Field(() => DateTimeScalar)
  until: Date;

  /** whole days without water, today's included */
  @Field(() => Int)
  days: number;

  /** what bounds it: `root zone`, `common practice`, `rule` or `longest` */
  @Field(() => String)
  because: string;

  /** the zone that is the first to need water */
  @Field(() => String)
  firstZone: string;

  /** what its programs would put out from now until then, less what its rain sensor holds back; null where it is not known */
  @Field(() => Float, { nullable: true })
  keptLitres: number | null;

  /** why it needs nobody: `rain sensor`, `weather`, `off` or `paused`; null where somebody has to go */
  @Field(() => String, { nullable: true })
  pausesItself: string | null;

  /** when the pause ends that is kept already; null where there is none, or it has no end yet */
  @Field(() => DateTimeScalar, { nullable: true })
  pausedUntil: Date | null;
}

/** Which controllers can be paused after the rain of the last few days, and until when. */
@ObjectType()
export class RainPauseList {
  @Field(() => DateScalar)
  today: string;

  /** those that need somebody first, then the water that they keep, the most first */
  @Field(() => [ControllerToPause])
  controllers: ControllerToPause[];

  /** properties of which nothing can be said: no station, or no rain of the last few days on record */
  @Field(() => Int)
  withoutWeather: number;
}
