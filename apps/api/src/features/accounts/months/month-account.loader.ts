import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { defineLoader } from '../../../platform/graphql/loader.js';
import type { MonthAccountRow } from './month-account.entity.js';
import { monthAccounts } from './month-account.repository.js';

/** All accounts of a property and of its meters, oldest first. */
export const accountsOfProperty = defineLoader<string, MonthAccountRow[]>((tx, ids) => monthAccounts.ofProperties(tx, ids), []);

/** The account of an id. */
export const accountOfId = defineLoader<string, MonthAccountRow | null>(
  async (tx, ids) => new Map((await monthAccounts.ofIds(tx, ids)).map((row) => [row.id, row])),
  null,
);

const CONFIDENCE = Symbol('least confidence');

/** How sure a gap must be before it counts, as the organization has set it. */
export async function leastConfidence(tx: OrganizationTransaction): Promise<number> {
  const present = tx.kept.get(CONFIDENCE) as Promise<number> | undefined;
  if (present) return present;
  const asked = tx
    .query<{ least: number }>('select least_confidence as least from organization where id = $1', [tx.organizationId])
    .then((rows) => rows[0]?.least ?? 0.9);
  tx.kept.set(CONFIDENCE, asked);
  return asked;
}

/** The months that have an account of any property, the newest first. */
export const monthsWithAccounts = (tx: OrganizationTransaction): Promise<string[]> => monthAccounts.months(tx);
