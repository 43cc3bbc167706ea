import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import type { StopRow } from './stop.entity.js';

/** One property in a crew's day. */
@ObjectType()
export class Stop {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => Int)
  position: number;

  /** stays on its day when the month is planned again */
  @Field(() => Boolean)
  locked: boolean;

  routeId: string;
  propertyId: string;
}

export const showStop = (row: StopRow): Stop =>
  Object.assign(new Stop(), {
    id: row.id,
    version: row.version,
    position: row.position,
    locked: row.locked,
    routeId: row.routeId,
    propertyId: row.propertyId,
  });
