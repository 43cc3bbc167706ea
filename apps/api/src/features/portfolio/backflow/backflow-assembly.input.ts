import { Field, ID, InputType } from '@nestjs/graphql';
import { DateScalar } from '../../../platform/graphql/scalars.js';

/** What is said of a backflow assembly. */
@InputType()
export class BackflowAssemblyInput {
  @Field(() => ID)
  propertyId: string;

  @Field(() => String)
  name: string;

  @Field(() => String, { nullable: true })
  location?: string | null;

  @Field(() => String, { nullable: true })
  kind?: string | null;

  @Field(() => DateScalar, { nullable: true })
  lastTestedOn?: string | null;

  @Field(() => DateScalar, { nullable: true })
  nextTestDueOn?: string | null;
}
