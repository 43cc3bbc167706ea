import { Field, ID, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { RainPauseRow } from './rain-pause.entity.js';

/** A controller stopped for a time. */
@ObjectType()
export class RainPause {
  @Field(() => ID)
  id: string;

  @Field(() => ID)
  controllerId: string;

  @Field(() => DateTimeScalar)
  pausedFrom: Date;

  /** null while it is still paused */
  @Field(() => DateTimeScalar, { nullable: true })
  pausedUntil: Date | null;
}

export const showRainPause = (row: RainPauseRow): RainPause =>
  Object.assign(new RainPause(), { id: row.id, controllerId: row.controllerId, pausedFrom: row.pausedFrom, pausedUntil: row.pausedUntil });
