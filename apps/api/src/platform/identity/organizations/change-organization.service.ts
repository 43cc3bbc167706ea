import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../database/organization-transaction.js';
import { Events } from '../../records/events.js';
import { identityProblems } from '../sessions/identity.problems.js';
import type { OrganizationItself } from './organization.entity.js';
import { OrganizationChanged } from './organization-changed.event.js';
import type { OrganizationInput } from './organization.input.js';
import { organizations } from './organization.repository.js';

/** Changes the organization's name, units, language and what opens a finding. */
@Injectable()
export class ChangeOrganization {
  constructor(private readonly events: Events) {}

  async run(tx: OrganizationTransaction, version: number, input: OrganizationInput): Promise<OrganizationItself> {
    const { name, units, language, leastConfidence, leastLitres, leastMoney } = input;
    const kept = await organizations.change(tx, version, { name: name.trim(), units, language, leastConfidence, leastLitres, leastMoney });
    const present = await organizations.own(tx);
    if (!kept) throw identityProblems.changedMeanwhile({ thing: 'organization', version: present.version });
    await this.events.emit(tx, new OrganizationChanged(present));
    return present;
  }
}
