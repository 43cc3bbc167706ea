import { Field, Float, ID, Int, ObjectType } from '@nestjs/graphql';
import { Language, UnitSystem } from '../../../platform/graphql/choices.type.js';
import { DateTimeScalar } from '../../../platform/graphql/scalars.js';
import type { ClientRow } from './client.entity.js';

/** Who pays. */
@ObjectType()
export class Client {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => DateTimeScalar, { nullable: true })
  retiredAt: Date | null;

  @Field(() => String)
  name: string;

  @Field(() => [String], { nullable: true, description: 'Null for those who do not read the portfolio.' })
  emails: string[] | null;

  @Field(() => Language, { nullable: true })
  language: Language | null;

  @Field(() => UnitSystem, { nullable: true })
  units: UnitSystem | null;

  @Field(() => Float, { nullable: true, description: 'Null where none is set, and for those who do not read the portfolio.' })
  notToExceed: number | null;
}

export const showClient = (row: ClientRow): Client =>
  Object.assign(new Client(), {
    id: row.id,
    version: row.version,
    retiredAt: row.retiredAt,
    name: row.name,
    emails: row.emails,
    language: row.language,
    units: row.units,
    notToExceed: row.notToExceed,
  });
