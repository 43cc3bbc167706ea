import { Field, ID, ObjectType } from '@nestjs/graphql';
import { RoleName } from '../../graphql/choices.type.js';
import { Person } from '../members/person.type.js';
import { Organization } from '../organizations/organization.type.js';

/** One of the organizations that a person may choose. */
@ObjectType()
export class Membership {
  @Field(() => ID)
  organizationId: string;

  @Field(() => String)
  organizationName: string;

  @Field(() => RoleName)
  role: RoleName;
}

/** Who is signed in, where, and what they may do. */
@ObjectType()
export class Me {
  @Field(() => Person)
  person: Person;

  @Field(() => RoleName)
  role: RoleName;

  @Field(() => [String])
  permissions: string[];

  @Field(() => Organization)
  organization: Organization;

  @Field(() => [Membership])
  memberships: Membership[];

  @Field(() => ID)
  memberId: string;

  @Field(() => ID, { nullable: true })
  clientId: string | null;

  @Field(() => [ID])
  crewIds: string[];
}
