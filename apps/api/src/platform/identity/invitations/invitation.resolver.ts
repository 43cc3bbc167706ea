import { Args, ID, Mutation, Query, Resolver } from '@nestjs/graphql';
import { inTransaction, type OrganizationTransaction } from '../../database/organization-transaction.js';
import { Language } from '../../graphql/choices.type.js';
import { organizationActor } from '../../database/actor.js';
import { platformProblems } from '../../problems/platform.problems.js';
import { isUuid } from '../../records/uuid.js';
import { Allow, Public } from '../allow.js';
import { organizations } from '../organizations/organization.repository.js';
import { Permission } from '../permission.js';
import type { RequestScope } from '../request-scope.js';
import { SignedIn, signedIn } from '../sign-in/sign-in.type.js';
import { Scope, Tx } from '../tx.js';
import { AcceptInvitation } from './accept-invitation.service.js';
import { InvitationArguments } from './invitation.input.js';
import { readLink } from './invitation-link.js';
import { invitations } from './invitation.repository.js';
import { Invitation, InvitationInfo, InvitationMade, showInvitation } from './invitation.type.js';
import { InviteMember } from './invite-member.service.js';

/** People are asked to become members, and answer. */
@Resolver(() => Invitation)
export class InvitationResolver {
  constructor(
    private readonly inviteMember: InviteMember,
    private readonly acceptInvitation: AcceptInvitation,
  ) {}

  @Allow(Permission.ManageMembers)
  @Query(() => [Invitation], { name: 'invitations' })
  async waiting(@Tx() tx: OrganizationTransaction): Promise<Invitation[]> {
    return (await invitations.waiting(tx)).map(showInvitation);
  }

  @Public('whoever is invited is not signed in yet; the link is the secret')
  @Query(() => InvitationInfo, { name: 'invitation', nullable: true })
  async ofLink(@Scope() scope: RequestScope, @Args('link', { type: () => String }) link: string): Promise<InvitationInfo | null> {
    const named = readLink(link);
    if (!named) return null;
    return inTransaction(scope.source, organizationActor(named.organizationId, 'job'), async (tx) => {
      const row = await invitations.ofToken(tx, named.tokenHash);
      return (
        row &&
        Object.assign(new InvitationInfo(), {
          email: row.email,
          name: row.name,
          language: Language[row.language],
          organizationName: (await organizations.own(tx)).name,
        })
      );
    });
  }

  @Allow(Permission.ManageMembers)
  @Mutation(() => InvitationMade, { name: 'inviteMember' })
  async invite(@Tx() tx: OrganizationTransaction, @Args() invited: InvitationArguments): Promise<InvitationMade> {
    const { email, name, role } = invited;
    const language = invited.language ?? (await organizations.own(tx)).language;
    const made = await this.inviteMember.run(tx, { email, name, role, clientId: invited.clientId ?? null, language });
    return Object.assign(new InvitationMade(), { invitation: showInvitation(made.invitation), link: made.link });
  }

  @Allow(Permission.ManageMembers)
  @Mutation(() => [Invitation], { name: 'withdrawInvitation', description: 'The link no longer opens. Answers those that still wait.' })
  async withdraw(@Tx() tx: OrganizationTransaction, @Args('id', { type: () => ID }) id: string): Promise<Invitation[]> {
    if (!isUuid(id) || !(await invitations.withdraw(tx, id))) throw platformProblems.notFound({ thing: 'invitation', id });
    return (await invitations.waiting(tx)).map(showInvitation);
  }

  @Public('whoever is invited is not signed in yet; the link is the secret')
  @Mutation(() => SignedIn, { name: 'acceptInvitation' })
  async accept(
    @Scope() scope: RequestScope,
    @Args('link', { type: () => String }) link: string,
    @Args('password', { type: () => String }) password: string,
  ): Promise<SignedIn> {
    return signedIn(await this.acceptInvitation.run(scope, link, password));
  }
}
