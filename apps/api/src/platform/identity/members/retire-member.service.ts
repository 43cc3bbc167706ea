import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../database/organization-transaction.js';
import { platformProblems } from '../../problems/platform.problems.js';
import { ChangeMember } from './change-member.service.js';
import type { MemberRow } from './member.entity.js';
import { members } from './member.repository.js';

/** Takes a member out of the organization: their sessions in it end with the commit. */
@Injectable()
export class RetireMember {
  constructor(private readonly changeMember: ChangeMember) {}

  async run(tx: OrganizationTransaction, id: string, version: number): Promise<MemberRow> {
    const [present] = await members.ofIds(tx, [id]);
    if (!present) throw platformProblems.notFound({ thing: 'member', id });
    const retired = await this.changeMember.run(tx, id, version, {
      deed: 'retire',
      role: present.role,
      clientId: present.clientId,
      retiredAt: new Date(),
    });
    await tx.query('delete from session where person_id = $1 and organization_id = $2', [present.personId, tx.organizationId]);
    return retired;
  }
}
