import type { OrganizationTransaction } from '../../platform/database/organization-transaction.js';
import { organizations } from '../../platform/identity/organizations/organization.repository.js';
import { nowOf, todayOf } from '../../platform/jobs/clock.js';

/** The instant now, on the organization's clock. */
export const nowIn = async (tx: OrganizationTransaction): Promise<Date> => nowOf(await organizations.own(tx));

/** The organization's day today. */
export const todayIn = async (tx: OrganizationTransaction): Promise<string> => todayOf(await organizations.own(tx));
