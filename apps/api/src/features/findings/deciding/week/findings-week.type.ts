import { Field, Float, Int, ObjectType } from '@nestjs/graphql';
import type { PaceVerdict } from '@rillbook/metering/detection/life/pace-of-use.js';
import { DateScalar } from '../../../../platform/graphql/scalars.js';
import { Finding } from '../../finding.type.js';

/** How fast a property uses what it is allowed, in shares of it. */
@ObjectType()
export class PaceOfProperty {
  /** of the newest three days [–] */
  @Field(() => Float)
  shortShare: number;

  /** of the newest fourteen days [–] */
  @Field(() => Float)
  longShare: number;

  /** act now, watch or within */
  @Field(() => String)
  verdict: PaceVerdict;

  /** the newest day that is known whole */
  @Field(() => DateScalar)
  through: string;

  propertyId: string;
}

/** A week of findings: what began, what came back, what ended, and where somebody has to go now. */
@ObjectType()
export class FindingsWeek {
  /** its first day */
  @Field(() => DateScalar)
  from: string;

  /** its last day, today */
  @Field(() => DateScalar)
  through: string;

  /** properties that use more than they are allowed, the fastest first; only where meters are read by the hour */
  @Field(() => [PaceOfProperty])
  paces: PaceOfProperty[];

  /** those that nobody had seen before and that are not silent, the dearest first */
  @Field(() => [Finding])
  begun: Finding[];

  @Field(() => [Finding])
  cameBack: Finding[];

  /** resolved by a person or no longer seen */
  @Field(() => [Finding])
  ended: Finding[];

  /** open ones older than the week that nobody has decided */
  @Field(() => Int)
  stillWaiting: number;

  /** what they cost in a month; null where none of them has a price */
  @Field(() => Float, { nullable: true })
  stillWaitingMoney: number | null;
}
