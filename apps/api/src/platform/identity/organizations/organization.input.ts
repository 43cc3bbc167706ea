import { Field, Float, InputType } from '@nestjs/graphql';
import { Language, UnitSystem } from '../../graphql/choices.type.js';

/** What an owner may change of the organization. */
@InputType()
export class OrganizationInput {
  @Field(() => String)
  name: string;

  @Field(() => UnitSystem)
  units: UnitSystem;

  @Field(() => Language)
  language: Language;

  @Field(() => Float)
  leastConfidence: number;

  @Field(() => Float)
  leastLitres: number;

  @Field(() => Float)
  leastMoney: number;
}
