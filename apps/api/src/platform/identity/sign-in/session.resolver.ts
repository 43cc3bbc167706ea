import { Args, ID, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../database/organization-transaction.js';
import { Language } from '../../graphql/choices.type.js';
import { Allow, Public } from '../allow.js';
import { platformProblems } from '../../problems/platform.problems.js';
import { people } from '../members/person.repository.js';
import { Permission } from '../permission.js';
import type { RequestScope } from '../request-scope.js';
import { takeToken, tokenOf } from '../sessions/cookie.js';
import { Sessions } from '../sessions/sessions.js';
import { Scope, Tx } from '../tx.js';
import { ChangePassword } from './change-password.service.js';
import { Enter } from './enter.service.js';
import { Me } from './me.type.js';
import { ShowMe } from './show-me.service.js';
import { SignIn } from './sign-in.service.js';
import { SignInResult, type SignedIn, type SignInRefused } from './sign-in.type.js';

/** Who is signed in: into the house, out of it, and in which language. */
@Resolver(() => Me)
export class SessionResolver {
  constructor(
    private readonly signIn: SignIn,
    private readonly showMe: ShowMe,
    private readonly sessions: Sessions,
    private readonly enter: Enter,
    private readonly changePassword: ChangePassword,
  ) {}

  @Public('says to a stranger that nobody is signed in')
  @Query(() => Me, { name: 'me', nullable: true })
  async me(@Scope() scope: RequestScope): Promise<Me | null> {
    return scope.actor ? this.showMe.run(await scope.open()) : null;
  }

  @Public('whoever signs in is not signed in yet')
  @Mutation(() => SignInResult, { name: 'signIn' })
  async enterHouse(
    @Scope() scope: RequestScope,
    @Args('email', { type: () => String }) email: string,
    @Args('password', { type: () => String }) password: string,
    @Args('organizationId', { type: () => ID, nullable: true }) organizationId: string | null,
  ): Promise<SignedIn | SignInRefused> {
    return this.signIn.run(scope, { email, password, organizationId: organizationId ?? null });
  }

  @Public('a session that has ended can still be signed out')
  @Mutation(() => Boolean, { name: 'signOut' })
  async signOut(@Scope() scope: RequestScope): Promise<boolean> {
    const token = tokenOf(scope.request);
    if (token) await this.sessions.close(token);
    takeToken(scope.request, scope.response);
    return token !== null;
  }

  @Allow(Permission.BeSignedIn)
  @Mutation(() => Me, { name: 'chooseLanguage' })
  async chooseLanguage(@Tx() tx: OrganizationTransaction, @Args('language', { type: () => Language }) language: Language): Promise<Me> {
    await people.change(tx, tx.actor.personId!, { language });
    return this.showMe.run(tx);
  }

  @Allow(Permission.BeSignedIn)
  @Mutation(() => Boolean, { name: 'signOutEverywhere' })
  async signOutEverywhere(@Tx() tx: OrganizationTransaction, @Scope() { request, response }: RequestScope): Promise<boolean> {
    await this.sessions.closeAll(tx.actor.personId!);
    takeToken(request, response);
    return true;
  }

  @Allow(Permission.BeSignedIn)
  @Mutation(() => Me, { name: 'chooseOrganization' })
  async chooseOrganization(@Scope() scope: RequestScope, @Args('organizationId', { type: () => ID }) organizationId: string): Promise<Me> {
    const personId = scope.actor!.personId!;
    const memberships = await this.sessions.memberships(personId);
    if (!memberships.some((one) => one.organizationId === organizationId))
      throw platformProblems.notFound({ thing: 'organization', id: organizationId });
    return this.enter.run(scope, personId, organizationId);
  }

  @Allow(Permission.BeSignedIn)
  @Mutation(() => Boolean, { name: 'changePassword' })
  async change(
    @Scope() scope: RequestScope,
    @Tx() tx: OrganizationTransaction,
    @Args('present', { type: () => String }) present: string,
    @Args('wished', { type: () => String }) wished: string,
  ): Promise<boolean> {
    await this.changePassword.run(scope, tx, { present, wished });
    return true;
  }
}
