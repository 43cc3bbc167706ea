import { Temporal } from 'temporal-polyfill';
import type { OrganizationTransaction } from '../../platform/database/organization-transaction.js';
import { organizations } from '../../platform/identity/organizations/organization.repository.js';
import { nowOf, todayOf } from '../../platform/jobs/clock.js';

const MINUTES_AN_HOUR = 60;

/** The instant now, on the organization's clock. */
export const nowIn = async (tx: OrganizationTransaction): Promise<Date> => nowOf(await organizations.own(tx));

/** The organization's day today. */
export const todayIn = async (tx: OrganizationTransaction): Promise<string> => todayOf(await organizations.own(tx));

/** Minutes since midnight on the organization's clock. */
export async function minuteIn(tx: OrganizationTransaction): Promise<number> {
  const own = await organizations.own(tx);
  const { hour, minute } = Temporal.Instant.fromEpochMilliseconds(nowOf(own).getTime()).toZonedDateTimeISO(own.timeZone);
  return MINUTES_AN_HOUR * hour + minute;
}
