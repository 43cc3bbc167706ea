import { LONG_DAYS, paceOfUse } from '@rillbook/metering/detection/life/pace-of-use.js';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { grouped } from '../../../../platform/graphql/loader.js';
import { accountsOfProperty } from '../../../accounts/months/month-account.loader.js';
import { newestDaysOfProperties } from '../../../metering/usage/usage-days.loader.js';
import { PaceOfProperty } from './findings-week.type.js';

/** How fast the places that are read by the hour use their allowance, the fastest first; those whose newest day is before `since` are left out. */
export async function pacesOfProperties(tx: OrganizationTransaction, since: string): Promise<PaceOfProperty[]> {
  const days = grouped(await newestDaysOfProperties(tx, since, LONG_DAYS), ({ propertyId }) => propertyId);
  const paces = await Promise.all(
    [...days].map(async ([propertyId, used]) => {
      const allowed = await allowedByMonth(tx, propertyId);
      const pace = paceOfUse(used.map(({ day, usedL }) => ({ usedL, allowedL: allowed.get(day.slice(0, 7)) ?? null })));
      return pace && Object.assign(new PaceOfProperty(), pace, { propertyId, through: used.at(-1)!.day });
    }),
  );
  return paces.filter((pace) => pace !== null).sort((one, other) => other.shortShare - one.shortShare);
}

/** Allowed on an average day of each month that has an account [L]. */
async function allowedByMonth(tx: OrganizationTransaction, propertyId: string): Promise<Map<string, number | null>> {
  const rows = (await accountsOfProperty.of(tx).load(propertyId)).filter(({ meterId }) => meterId === null);
  return new Map(
    rows.map(({ month, allowedL, detail }) => [month.slice(0, 7), allowedL === null ? null : allowedL / detail.account.daysCovered]),
  );
}
