import { probabilityAboveZero } from '@rillbook/metering/uncertainty/normal-probability.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { accountOfId, leastConfidence } from '../../accounts/months/month-account.loader.js';
import type { SiteBeyond } from './owners-month.repository.js';

/** A site that will not come right without an upgrade. */
export interface UpgradeSite {
  readonly propertyId: string;
  readonly name: string;
  /** needed beyond what is allowed [L] */
  readonly litres: number;
  /** null where the price is not known [money] */
  readonly money: number | null;
}

const SHOWN = 20;

/**
 * The sites whose need is above the allowance as surely as the organization asks, by the gap's own uncertainty; those with the most first, and
 * no more than are shown. A gap whose uncertainty is not known is not sure.
 */
export async function sitesToUpgrade(tx: OrganizationTransaction, beyond: readonly SiteBeyond[]): Promise<UpgradeSite[]> {
  const least = await leastConfidence(tx);
  const found: UpgradeSite[] = [];
  for (let at = 0; at < beyond.length && found.length < SHOWN; at += SHOWN) {
    const sites = await Promise.all(beyond.slice(at, at + SHOWN).map((site) => upgradeOf(tx, site, least)));
    found.push(...sites.filter((site) => site !== null));
  }
  return found.slice(0, SHOWN);
}

async function upgradeOf(
  tx: OrganizationTransaction,
  { accountId, propertyId, name }: SiteBeyond,
  least: number,
): Promise<UpgradeSite | null> {
  const account = await accountOfId.of(tx).load(accountId);
  if (!account) return null;
  const { litres, sdLitres } = account.detail.account.property.landscapeGap;
  if (litres === null || sdLitres === null || litres <= 0) return null;
  if (sdLitres > 0 && probabilityAboveZero(litres, sdLitres) < least) return null;
  const { pricePerLitre } = account.detail;
  return { propertyId, name, litres, money: pricePerLitre === null ? null : litres * pricePerLitre };
}
