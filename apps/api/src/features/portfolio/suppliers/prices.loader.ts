import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { type Prices, pricesOfTiers } from './prices-of-tiers.service.js';
import { rateTiersOfSupplier } from './rates/rate-tiers.loader.js';

/** The prices of a supplier, read once in a transaction; without a supplier, what the meters state. */
export async function pricesOf(tx: OrganizationTransaction, supplierId: string | null): Promise<Prices> {
  return pricesOfTiers(supplierId ? await rateTiersOfSupplier.of(tx).load(supplierId) : []);
}
