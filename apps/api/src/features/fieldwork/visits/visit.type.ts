import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { VisitRow } from './visit.entity.js';

/** What was used up at a visit. */
@ObjectType()
export class VisitMaterial {
  @Field(() => String)
  name: string;

  @Field(() => Float)
  count: number;

  @Field(() => String, { nullable: true })
  unit: string | null;
}

/** What really happened at a stop. */
@ObjectType()
export class Visit {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => ID)
  propertyId: string;

  @Field(() => ID, { nullable: true })
  stopId: string | null;

  @Field(() => ID, { nullable: true })
  crewId: string | null;

  @Field(() => DateTimeScalar)
  arrivedAt: Date;

  @Field(() => DateTimeScalar, { nullable: true })
  closedAt: Date | null;

  @Field(() => String, { nullable: true })
  doneNote: string | null;

  @Field(() => String, { nullable: true })
  leftNote: string | null;

  /** when an arrival by mistake was taken back; null of what was a visit */
  @Field(() => DateTimeScalar, { nullable: true })
  withdrawnAt: Date | null;

  /** hands at work, all persons together; null where nobody counted */
  @Field(() => Float, { nullable: true })
  workedMinutes: number | null;

  @Field(() => [VisitMaterial])
  materials: VisitMaterial[];

  personId: string | null;
}

export function showVisit(row: VisitRow): Visit {
  const { organizationId: _, deviceRecordId: __, closedBy: ___, withdrawnBy: ____, ...shown } = row;
  return Object.assign(new Visit(), shown);
}
