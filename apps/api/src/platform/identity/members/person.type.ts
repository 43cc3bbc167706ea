import { Field, ID, ObjectType } from '@nestjs/graphql';
import { Language } from '../../graphql/choices.type.js';
import type { PersonRow } from './person.entity.js';

/** Somebody who signs in. */
@ObjectType()
export class Person {
  @Field(() => ID)
  id: string;

  @Field(() => String)
  email: string;

  @Field(() => String)
  name: string;

  @Field(() => Language)
  language: Language;
}

export const showPerson = (row: PersonRow): Person =>
  Object.assign(new Person(), { id: row.id, email: row.email, name: row.name, language: Language[row.language] });
