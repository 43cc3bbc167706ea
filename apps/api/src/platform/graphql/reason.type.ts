import { Field, ObjectType } from '@nestjs/graphql';
import { JsonScalar } from './scalars.js';

/** A code with details, of which the screens make a sentence in the reader's language and units. */
@ObjectType()
export class Reason {
  @Field(() => String)
  code: string;

  @Field(() => JsonScalar)
  details: unknown;
}
