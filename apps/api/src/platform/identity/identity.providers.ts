import { AcceptInvitation } from './invitations/accept-invitation.service.js';
import { InvitationResolver } from './invitations/invitation.resolver.js';
import { InviteMember } from './invitations/invite-member.service.js';
import { AdmitPerson } from './members/admit-person.service.js';
import { ChangeMember } from './members/change-member.service.js';
import { MemberResolver } from './members/member.resolver.js';
import { RetireMember } from './members/retire-member.service.js';
import { ChangeOrganization } from './organizations/change-organization.service.js';
import { OrganizationResolver } from './organizations/organization.resolver.js';
import { ChangePassword } from './sign-in/change-password.service.js';
import { ClearDemo } from './sign-in/clear-demo.service.js';
import { Enter } from './sign-in/enter.service.js';
import { FirstPageResolver } from './sign-in/first-page.resolver.js';
import { FoundOrganization } from './sign-in/found-organization.service.js';
import { SessionResolver } from './sign-in/session.resolver.js';
import { ShowMe } from './sign-in/show-me.service.js';
import { SignIn } from './sign-in/sign-in.service.js';

/** Everything of signing in, members and invitations that Nest must know. */
export const identity = [
  AcceptInvitation,
  AdmitPerson,
  ChangeMember,
  ChangeOrganization,
  ChangePassword,
  ClearDemo,
  Enter,
  FirstPageResolver,
  FoundOrganization,
  InvitationResolver,
  InviteMember,
  MemberResolver,
  OrganizationResolver,
  RetireMember,
  SessionResolver,
  ShowMe,
  SignIn,
];
