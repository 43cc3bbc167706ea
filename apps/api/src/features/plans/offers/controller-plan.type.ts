import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { MonthScalar } from '../../../platform/graphql/scalars.js';
import { Reason } from '../../../platform/graphql/reason.type.js';
import { ZoneChoices } from './zone-choices.type.js';
import { Program } from '../../settings/programs/program.type.js';

/** What programs do to a zone in the month; wasted is below the roots, run off, or left in lines. */
@ObjectType()
export class PlannedZone {
  @Field(() => ID)
  zoneId: string;

  @Field(() => Int)
  station: number;

  @Field(() => Float)
  usedLitres: number;

  @Field(() => Float)
  neededLitres: number;

  @Field(() => Float)
  unmetLitres: number;

  @Field(() => Float)
  wastedLitres: number;

  @Field(() => Float)
  ranOffLitres: number;
}

/** A rule that programs would break. */
@ObjectType()
export class PlanBreach {
  @Field(() => String)
  rule: string;

  /** such as `day not allowed` or `blocked hours` */
  @Field(() => String)
  kind: string;

  @Field(() => String)
  program: string;

  @Field(() => [Int])
  stations: number[];

  /** days of the month's whole weeks on which it is broken */
  @Field(() => Int)
  times: number;
}

/** Programs replayed over a month: what they use, leave unmet and waste, when they end, and what they do not keep. */
@ObjectType()
export class PlanResult {
  @Field(() => [PlannedZone])
  zones: PlannedZone[];

  @Field(() => Float)
  usedLitres: number;

  @Field(() => Float)
  neededLitres: number;

  @Field(() => Float)
  unmetLitres: number;

  @Field(() => Float)
  wastedLitres: number;

  @Field(() => Float)
  ranOffLitres: number;

  @Field(() => Int)
  keyPresses: number;

  /** HH:MM; null where nothing runs */
  @Field(() => String, { nullable: true })
  beginsAt: string | null;

  @Field(() => String, { nullable: true })
  endsAt: string | null;

  @Field(() => [PlanBreach])
  breaches: PlanBreach[];

  /** limits of timer, hours, meter or main that are not kept, in words of the plan */
  @Field(() => [String])
  limits: string[];
}

/** Programs that are offered. */
@ObjectType()
export class PlanOffer {
  /** `as set`, `percent`, `percent and days`, `percent and starts`, `percent, days and starts` or `full` */
  @Field(() => String)
  kind: string;

  @Field(() => [Program])
  programs: Program[];

  @Field(() => PlanResult)
  result: PlanResult;
}

/** A need that no program meets. */
@ObjectType()
export class ImpossibleNeed {
  @Field(() => ID)
  zoneId: string;

  @Field(() => Int)
  station: number;

  @Field(() => Float)
  unmetLitres: number;

  /** what makes it impossible, in words of the plan */
  @Field(() => String)
  because: string;

  /** the upgrade that would free it, in words of the plan */
  @Field(() => String)
  freedBy: string;
}

/** What a controller keeps to because others water through the same meter: a part of its flow, or a part of the hours. */
@ObjectType()
export class SharedMeter {
  /** `flow` or `hours` */
  @Field(() => String)
  by: string;

  @Field(() => [ID])
  controllerIds: string[];

  /** what this controller may take at once [L/min] */
  @Field(() => Float)
  flowLPerMin: number;

  /** HH:MM */
  @Field(() => String)
  from: string;

  @Field(() => String)
  until: string;
}

/** A controller's month planned. */
@ObjectType()
export class ControllerPlan {
  @Field(() => ID)
  controllerId: string;

  @Field(() => MonthScalar)
  month: string;

  /** why there is no plan; null where there is one */
  @Field(() => Reason, { nullable: true })
  reason: Reason | null;

  /** the months of the record whose weather the need is taken from: the month itself, or the same month of earlier years */
  @Field(() => [MonthScalar])
  needMonths: string[];

  /** what is set now; null where nobody knows, or the controller does not run its own programs */
  @Field(() => PlanResult, { nullable: true })
  present: PlanResult | null;

  /** null where no percent and no days keep every rule and limit */
  @Field(() => PlanOffer, { nullable: true })
  leastChange: PlanOffer | null;

  @Field(() => PlanOffer, { nullable: true })
  full: PlanOffer | null;

  /** zones, programs, days and minutes cost at most this share more than the best there is */
  @Field(() => Float, { nullable: true })
  gapShare: number | null;

  /** what fitting starts and soaks into the hours added, as a share of the cost */
  @Field(() => Float, { nullable: true })
  layoutShare: number | null;

  @Field(() => [ImpossibleNeed])
  impossible: ImpossibleNeed[];

  /** null where it has its meters for itself, or nobody knows what they carry */
  @Field(() => SharedMeter, { nullable: true })
  sharedMeter: SharedMeter | null;

  /** zones whose plants do not fit together */
  @Field(() => [ZoneChoices])
  choices: ZoneChoices[];
}
