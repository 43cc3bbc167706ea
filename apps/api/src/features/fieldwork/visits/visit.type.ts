import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { VisitRow } from './visit.entity.js';

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

  personId: string | null;
}

export function showVisit(row: VisitRow): Visit {
  const { organizationId: _, deviceRecordId: __, ...shown } = row;
  return Object.assign(new Visit(), shown);
}
