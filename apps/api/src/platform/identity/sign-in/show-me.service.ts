import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../database/organization-transaction.js';
import { RoleName } from '../../graphql/choices.type.js';
import { platformProblems } from '../../problems/platform.problems.js';
import { people } from '../members/person.repository.js';
import { showPerson } from '../members/person.type.js';
import { organizations } from '../organizations/organization.repository.js';
import { showOrganization } from '../organizations/organization.type.js';
import { PERMISSIONS } from '../permission.js';
import { Sessions } from '../sessions/sessions.js';
import { Me, Membership } from './me.type.js';

/** Says who is signed in, where, and what they may do. */
@Injectable()
export class ShowMe {
  constructor(private readonly sessions: Sessions) {}

  async run(tx: OrganizationTransaction): Promise<Me> {
    const { personId, memberId, role, clientId } = tx.actor;
    if (!personId || !memberId) throw platformProblems.signInNeeded({});
    const crews = await tx.query<{ id: string }>(
      'select crew_member.crew_id as id from crew_member join crew on crew.organization_id = crew_member.organization_id and crew.id = crew_member.crew_id where crew_member.organization_id = $1 and crew_member.member_id = $2 and crew.retired_at is null order by crew.name',
      [tx.organizationId, memberId],
    );
    const memberships = await this.sessions.memberships(personId);
    return Object.assign(new Me(), {
      person: showPerson(await people.one(tx, personId)),
      role: RoleName[role],
      permissions: [...PERMISSIONS[role]],
      organization: showOrganization(await organizations.own(tx)),
      memberships: memberships.map((one) => Object.assign(new Membership(), { ...one, role: RoleName[one.role] })),
      memberId,
      clientId,
      crewIds: crews.map((crew) => crew.id),
    });
  }
}
