import { Field, ID, ObjectType } from '@nestjs/graphql';
import { Language, RoleName } from '../../graphql/choices.type.js';
import { DateTimeScalar } from '../../graphql/scalars.js';
import type { InvitationRow } from './invitation.entity.js';

/** Somebody is asked to become a member. */
@ObjectType()
export class Invitation {
  @Field(() => ID)
  id: string;

  @Field(() => String)
  email: string;

  @Field(() => String)
  name: string;

  @Field(() => RoleName)
  role: RoleName;

  @Field(() => DateTimeScalar)
  expiresAt: Date;
}

/** The invitation and its link, which is told once. */
@ObjectType()
export class InvitationMade {
  @Field(() => Invitation)
  invitation: Invitation;

  /** a path of this server: put its address before it */
  @Field(() => String)
  link: string;
}

/** What whoever holds the link may know. */
@ObjectType()
export class InvitationInfo {
  @Field(() => String)
  email: string;

  @Field(() => String)
  name: string;

  @Field(() => String)
  organizationName: string;

  @Field(() => Language)
  language: Language;
}

export const showInvitation = (row: InvitationRow): Invitation =>
  Object.assign(new Invitation(), { id: row.id, email: row.email, name: row.name, role: RoleName[row.role], expiresAt: row.expiresAt });
