import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar } from './scalars.js';

/** The thing was changed since it was read: load it again and decide. */
@ObjectType()
export class ChangedMeanwhile {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => String, { nullable: true })
  changedBy: string | null;

  @Field(() => DateTimeScalar, { nullable: true })
  changedAt: Date | null;
}

/** Another thing of the kind has this name. */
@ObjectType()
export class NameTaken {
  @Field(() => String)
  name: string;
}

/** Others still need the thing. */
@ObjectType()
export class StillInUse {
  /** what needs it, such as 'zone' */
  @Field(() => String)
  by: string;

  @Field(() => Int)
  count: number;
}

const made = <T extends object>(type: new () => T, values: T): T => Object.assign(new type(), values);

export const changedMeanwhile = (conflict: ChangedMeanwhile): ChangedMeanwhile =>
  made(ChangedMeanwhile, { id: conflict.id, version: conflict.version, changedBy: conflict.changedBy, changedAt: conflict.changedAt });
export const nameTaken = (name: string): NameTaken => made(NameTaken, { name });
export const stillInUse = (by: string, count: number): StillInUse => made(StillInUse, { by, count });
