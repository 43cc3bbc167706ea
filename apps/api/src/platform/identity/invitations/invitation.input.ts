import { ArgsType, Field, ID } from '@nestjs/graphql';
import { Language, RoleName } from '../../graphql/choices.type.js';

/** Whom an owner invites, and for what place. */
@ArgsType()
export class InvitationArguments {
  @Field(() => String)
  email: string;

  @Field(() => String)
  name: string;

  @Field(() => RoleName)
  role: RoleName;

  @Field(() => ID, { nullable: true })
  clientId?: string | null;

  /** the organization's when left out */
  @Field(() => Language, { nullable: true })
  language?: Language | null;
}
