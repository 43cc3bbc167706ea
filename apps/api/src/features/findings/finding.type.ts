import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { Reason } from '../../platform/graphql/reason.type.js';
import { DateScalar, DateTimeScalar, JsonScalar } from '../../platform/graphql/scalars.js';
import type { FindingRow } from './finding.entity.js';

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

  @Field(() => Int)
  cameBack: number;

  @Field(() => String, { nullable: true })
  dismissedWhy: string | null;

  @Field(() => String, { nullable: true })
  resolvedWith: string | null;

  @Field(() => DateScalar, { nullable: true })
  acknowledgedUntil: string | null;

  @Field(() => DateTimeScalar, { nullable: true })
  decidedAt: Date | null;

  propertyId: string;
  decidedById: string | null;
}

/** A finding's row as the screens see it. */
export function showFinding(row: FindingRow): Finding {
  const { organizationId: _, causeKey: __, decidedBy, ...shown } = row;
  return Object.assign(new Finding(), shown, { decidedById: decidedBy });
}
