import { Field, InputType } from '@nestjs/graphql';

/** What is said of a water supplier. */
@InputType()
export class WaterSupplierInput {
  @Field(() => String)
  name: string;
}
