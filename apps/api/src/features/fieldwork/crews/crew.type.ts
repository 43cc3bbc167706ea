import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { CrewRow } from './crew.entity.js';

/** Those who go together. */
@ObjectType()
export class Crew {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => DateTimeScalar, { nullable: true })
  retiredAt: Date | null;

  @Field(() => String)
  name: string;
}

export const showCrew = (row: CrewRow): Crew =>
  Object.assign(new Crew(), { id: row.id, version: row.version, retiredAt: row.retiredAt, name: row.name });
