import { Field, Float, InputType } from '@nestjs/graphql';
import { Language, UnitSystem } from '../../../platform/graphql/choices.type.js';

/** What is said of a client. */
@InputType()
export class ClientInput {
  @Field(() => String)
  name: string;

  @Field(() => [String], { nullable: true })
  emails?: string[] | null;

  @Field(() => Language, { nullable: true })
  language?: Language | null;

  @Field(() => UnitSystem, { nullable: true })
  units?: UnitSystem | null;

  @Field(() => Float, { nullable: true })
  notToExceed?: number | null;
}
