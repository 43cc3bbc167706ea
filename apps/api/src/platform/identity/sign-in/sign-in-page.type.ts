import { Field, ObjectType } from '@nestjs/graphql';
import { RoleName } from '../../graphql/choices.type.js';
import { DEMO_PASSWORD, type Door } from '../members/demo-doors.js';

/** One person of the demonstration, ready to sign in. */
@ObjectType()
export class DemoDoor {
  @Field(() => String)
  email: string;

  @Field(() => String)
  password: string;

  @Field(() => String)
  name: string;

  @Field(() => RoleName)
  role: RoleName;

  @Field(() => String)
  organizationName: string;
}

/** What the sign-in page offers before anybody is known. */
@ObjectType()
export class SignInPage {
  /** nothing unless the browser runs on this machine */
  @Field(() => [DemoDoor])
  demo: DemoDoor[];

  /** no organization yet: the first can be founded */
  @Field(() => Boolean)
  empty: boolean;
}

export const showDoor = (door: Door): DemoDoor =>
  Object.assign(new DemoDoor(), {
    email: door.email,
    password: DEMO_PASSWORD,
    name: door.name,
    role: RoleName[door.role],
    organizationName: door.organizationName,
  });
