import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { RoleName } from '../../graphql/choices.type.js';
import { DateTimeScalar } from '../../graphql/scalars.js';
import type { MemberRow } from './member.entity.js';
import { Person, showPerson } from './person.type.js';

/** A person's place in the organization. */
@ObjectType()
export class Member {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => DateTimeScalar, { nullable: true })
  retiredAt: Date | null;

  @Field(() => Person)
  person: Person;

  @Field(() => RoleName)
  role: RoleName;

  /** the client of a member of that role; the portfolio shows it */
  clientId: string | null;
}

/** The row must have come with its person. */
export const showMember = (row: MemberRow): Member =>
  Object.assign(new Member(), {
    id: row.id,
    version: row.version,
    retiredAt: row.retiredAt,
    person: showPerson(row.person),
    role: RoleName[row.role],
    clientId: row.clientId,
  });
