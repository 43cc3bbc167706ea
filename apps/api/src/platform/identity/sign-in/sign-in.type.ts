import { createUnionType, Field, Int, ObjectType } from '@nestjs/graphql';
import { Me } from './me.type.js';

/** The session is open; its cookie came with this answer. */
@ObjectType()
export class SignedIn {
  @Field(() => Me)
  me: Me;
}

/** Why nobody was signed in: WRONG_EMAIL_OR_PASSWORD, TOO_MANY_TRIES, NO_ORGANIZATION. */
@ObjectType()
export class SignInRefused {
  @Field(() => String)
  code: 'WRONG_EMAIL_OR_PASSWORD' | 'TOO_MANY_TRIES' | 'NO_ORGANIZATION';

  @Field(() => Int, { nullable: true })
  retryInSeconds: number | null;
}

export const SignInResult = createUnionType({
  name: 'SignInResult',
  types: () => [SignedIn, SignInRefused] as const,
  resolveType: (value: object) => value.constructor as never,
});

export const signedIn = (me: Me): SignedIn => Object.assign(new SignedIn(), { me });
export const refused = (code: SignInRefused['code'], retryInSeconds: number | null = null): SignInRefused =>
  Object.assign(new SignInRefused(), { code, retryInSeconds });
