import { Args, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../database/organization-transaction.js';
import { Allow, Public } from '../allow.js';
import { demoDoors, isFromHere } from '../members/demo-doors.js';
import { organizations } from '../organizations/organization.repository.js';
import { Permission } from '../permission.js';
import type { RequestScope } from '../request-scope.js';
import { takeToken } from '../sessions/cookie.js';
import { Scope, Tx } from '../tx.js';
import { ClearDemo } from './clear-demo.service.js';
import { FoundOrganization } from './found-organization.service.js';
import { showDoor, SignInPage } from './sign-in-page.type.js';
import { SignedIn, signedIn } from './sign-in.type.js';

/** A server's first page: its demonstration, and the founding of its first organization. */
@Resolver(() => SignInPage)
export class FirstPageResolver {
  constructor(
    private readonly foundOrganization: FoundOrganization,
    private readonly clearDemo: ClearDemo,
  ) {}

  @Public('it is what is shown before anybody is signed in')
  @Query(() => SignInPage, { name: 'signInPage' })
  async page(@Scope() { source, request }: RequestScope): Promise<SignInPage> {
    const doors = isFromHere(request) ? await demoDoors(source) : [];
    return Object.assign(new SignInPage(), { demo: doors.map(showDoor), empty: await organizations.none(source) });
  }

  @Public('on an empty server there is nobody who could be signed in')
  @Mutation(() => SignedIn, { name: 'foundOrganization' })
  async found(
    @Scope() scope: RequestScope,
    @Args('name', { type: () => String }) name: string,
    @Args('personName', { type: () => String }) personName: string,
    @Args('email', { type: () => String }) email: string,
    @Args('password', { type: () => String }) password: string,
  ): Promise<SignedIn> {
    return signedIn(await this.foundOrganization.run(scope, name, { email, name: personName, language: 'en', password }));
  }

  @Allow(Permission.ManageOrganization)
  @Mutation(() => Boolean, { name: 'clearDemo' })
  async clear(@Tx() tx: OrganizationTransaction, @Scope() { request, response }: RequestScope): Promise<boolean> {
    await this.clearDemo.run(tx);
    takeToken(request, response);
    return true;
  }
}
