import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../database/organization-transaction.js';
import { between, judgeValues, name } from '../../problems/judge-values.js';
import { Events } from '../../records/events.js';
import { identityProblems } from '../sessions/identity.problems.js';
import type { OrganizationItself } from './organization.entity.js';
import { OrganizationChanged } from './organization-changed.event.js';
import type { OrganizationInput } from './organization.input.js';
import { organizations } from './organization.repository.js';

/** A finding needs a likelihood above an even chance; no volume or sum is beyond what a company could mean. */
const LIMITS = { name: name(), leastConfidence: between(0.5, 0.999), leastLitres: between(0, 1e9), leastMoney: between(0, 1e8) };

/** Changes the organization's name, units, language and what opens a finding. */
@Injectable()
export class ChangeOrganization {
  constructor(private readonly events: Events) {}

  async run(tx: OrganizationTransaction, version: number, input: OrganizationInput): Promise<OrganizationItself> {
    judgeValues(input, LIMITS);
    const { units, language, leastConfidence, leastLitres, leastMoney } = input;
    const values = { name: input.name.trim(), units, language, leastConfidence, leastLitres, leastMoney };
    const kept = await organizations.change(tx, version, values);
    const present = await organizations.own(tx);
    if (!kept) throw identityProblems.changedMeanwhile({ thing: 'organization', version: present.version });
    await this.events.emit(tx, new OrganizationChanged(present));
    return present;
  }
}
