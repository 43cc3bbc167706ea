import { type AvoidedUse, avoidedUse } from '@rillbook/metering/savings/avoided-use.js';
import { beforeAndAfter } from '@rillbook/metering/savings/before-and-after.js';
import { fitNeedBaseline, LEAST_BASELINE_MONTHS } from '@rillbook/metering/savings/need-baseline.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { accountOfId } from '../../accounts/months/month-account.loader.js';
import type { KnownAccount, WorkedProperty } from './owners-month.repository.js';

const CONFIDENCE = 0.9;

/** What the company's work saved in a month, over the properties where that can be told. */
export interface CompanySavings {
  readonly savedLitres: number;
  readonly halfWidthLitres: number;
  /** null where the price of one of them is not known: as in the clients' own reports */
  readonly savedMoney: number | null;
  readonly toldOf: number;
  readonly notToldOf: number;
}

/** Sums the savings; errors of different properties are each other's strangers, so that their squares add up. */
export async function companySavings(
  tx: OrganizationTransaction,
  worked: readonly WorkedProperty[],
  accounts: readonly KnownAccount[],
  month: string,
): Promise<CompanySavings> {
  const told = worked.flatMap(({ accountId, ...property }) => {
    const avoided = savedOf(property, accounts, month);
    return avoided ? [{ ...avoided, accountId }] : [];
  });
  const moneys = await Promise.all(told.map((each) => moneyOf(tx, each)));
  return {
    savedLitres: told.reduce((sum, { litres }) => sum + litres, 0),
    halfWidthLitres: Math.hypot(...told.map(({ halfWidthLitres }) => halfWidthLitres)),
    savedMoney: moneys.reduce((sum, money) => (sum === null || money === null ? null : sum + money), 0),
    toldOf: told.length,
    notToldOf: worked.length - told.length,
  };
}

type Told = Pick<AvoidedUse, 'litres'> & Pick<WorkedProperty, 'accountId'>;

async function moneyOf(tx: OrganizationTransaction, { litres, accountId }: Told): Promise<number | null> {
  const account = accountId === null ? null : await accountOfId.of(tx).load(accountId);
  const pricePerLitre = account?.detail.pricePerLitre ?? null;
  return pricePerLitre === null ? null : litres * pricePerLitre;
}

function savedOf(
  { id, firstWork }: Omit<WorkedProperty, 'accountId'>,
  accounts: readonly KnownAccount[],
  month: string,
): AvoidedUse | null {
  const own = accounts.filter(({ propertyId }) => propertyId === id);
  const { before, after } = beforeAndAfter(own, firstWork, { from: month, until: month });
  if (before.length < LEAST_BASELINE_MONTHS || after.length === 0) return null;
  try {
    return avoidedUse(fitNeedBaseline(before), after, CONFIDENCE);
  } catch (problem) {
    // A baseline without use, or of constant need, tells of no saving: it is counted as not told.
    if (problem instanceof DomainError) return null;
    throw problem;
  }
}
