import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateScalar } from '../../../platform/graphql/scalars.js';
import type { RouteRow } from './route.entity.js';

/** A crew's day: its stops in their order. */
@ObjectType()
export class Route {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => DateScalar)
  day: string;

  @Field(() => String, { nullable: true })
  note: string | null;

  crewId: string;
}

export const showRoute = (row: RouteRow): Route =>
  Object.assign(new Route(), { id: row.id, version: row.version, day: row.day, note: row.note, crewId: row.crewId });
