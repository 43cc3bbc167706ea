import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { Reason } from '../../platform/graphql/reason.type.js';
import { DateScalar, DateTimeScalar, JsonScalar } from '../../platform/graphql/scalars.js';
import type { FindingRow } from './finding.entity.js';

/** What a finding was told as, and since when, before more was known of its cause. */
@ObjectType()
export class FindingStep {
  @Field(() => String)
  kind: string;

  @Field(() => DateTimeScalar)
  at: Date;
}

/** Something a person should look at, with its evidence, water, money and confidence. */
@ObjectType()
export class Finding {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => ID, { nullable: true })
  meterId: string | null;

  @Field(() => ID, { nullable: true })
  controllerId: string | null;

  @Field(() => ID, { nullable: true })
  zoneId: string | null;

  @Field(() => String)
  kind: string;

  @Field(() => String)
  state: string;

  @Field(() => DateScalar, { nullable: true })
  fromOn: string | null;

  @Field(() => DateScalar, { nullable: true })
  untilOn: string | null;

  @Field(() => Float, { nullable: true })
  litres: number | null;

  @Field(() => Float, { nullable: true })
  money: number | null;

  @Field(() => Float, { nullable: true })
  confidence: number | null;

  @Field(() => Reason)
  says: Reason;

  @Field(() => JsonScalar, { nullable: true })
  evidence: unknown;

  @Field(() => DateTimeScalar)
  openedAt: Date;

  /** the time of the record that showed its end; null while it is seen */
  @Field(() => DateTimeScalar, { nullable: true })
  clearedAt: Date | null;

  /** what the same cause was told as before, the oldest first */
  @Field(() => [FindingStep])
  history: FindingStep[];

  @Field(() => Int)
  cameBack: number;

  @Field(() => String, { nullable: true })
  dismissedWhy: string | null;

  /** one of the few that the detector learns from */
  @Field(() => String, { nullable: true })
  dismissedReason: string | null;

  @Field(() => String, { nullable: true })
  resolvedWith: string | null;

  /** silent to the end of this day; null where it is silent until it clears, or not at all */
  @Field(() => DateScalar, { nullable: true })
  acknowledgedUntil: string | null;

  @Field(() => DateTimeScalar, { nullable: true })
  acknowledgedAt: Date | null;

  @Field(() => String, { nullable: true })
  acknowledgedNote: string | null;

  @Field(() => DateTimeScalar, { nullable: true })
  decidedAt: Date | null;

  propertyId: string;
  decidedById: string | null;
  acknowledgedById: string | null;
}

/** A finding's row as the screens see it. */
export function showFinding(row: FindingRow): Finding {
  const { organizationId: _, causeKey: __, causeFamily: ___, decidedBy, acknowledgedBy, history, ...shown } = row;
  const steps = history.map(({ kind, at }) => Object.assign(new FindingStep(), { kind, at: new Date(at) }));
  return Object.assign(new Finding(), shown, { history: steps, decidedById: decidedBy, acknowledgedById: acknowledgedBy });
}
