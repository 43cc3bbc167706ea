import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../database/organization-transaction.js';
import { identityProblems } from '../sessions/identity.problems.js';
import { organizations } from '../organizations/organization.repository.js';

/** Clears the demonstration away: its organizations, what is in them, and its people. */
@Injectable()
export class ClearDemo {
  async run(tx: OrganizationTransaction): Promise<void> {
    if (!(await organizations.own(tx)).isDemo) throw identityProblems.notADemo({});
    await organizations.clearDemonstrations(tx);
  }
}
