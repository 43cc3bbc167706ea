import { Field, ID, ObjectType } from '@nestjs/graphql';
import { DateTimeScalar, JsonScalar } from '../../../platform/graphql/scalars.js';

/** What was done to a thing: which columns, before and after, by whom, how and when. */
@ObjectType()
export class Change {
  @Field(() => ID)
  id: string;

  /** the kind of thing, such as 'zone' */
  @Field(() => String)
  thing: string;

  @Field(() => ID)
  thingId: string;

  @Field(() => String)
  deed: string;

  @Field(() => JsonScalar, { nullable: true })
  before: unknown;

  @Field(() => JsonScalar, { nullable: true })
  after: unknown;

  /** the person's name; null for background work and the command line */
  @Field(() => String, { nullable: true })
  by: string | null;

  /** screen, import or job */
  @Field(() => String)
  way: string;

  @Field(() => DateTimeScalar)
  at: Date;
}

export const showChange = (found: Change): Change => Object.assign(new Change(), found);
