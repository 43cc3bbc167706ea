import { Field, Float, ObjectType } from '@nestjs/graphql';

/** A part that a repair needs. */
@ObjectType()
export class Part {
  @Field(() => String)
  name: string;

  @Field(() => Float)
  count: number;

  @Field(() => Float)
  price: number;
}
