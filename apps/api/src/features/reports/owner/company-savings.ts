import { avoidedUse } from '@rillbook/metering/savings/avoided-use.js';
import { beforeAndAfter } from '@rillbook/metering/savings/before-and-after.js';
import { fitNeedBaseline, LEAST_BASELINE_MONTHS } from '@rillbook/metering/savings/need-baseline.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import type { KnownAccount, WorkedProperty } from './owners-month.repository.js';

const CONFIDENCE = 0.9;

/** What the company's work saved in a month, over the properties where that can be told. */
export interface CompanySavings {
  readonly savedLitres: number;
  readonly halfWidthLitres: number;
  readonly savedMoney: number;
  readonly toldOf: number;
  readonly notToldOf: number;
}

/** Sums the savings; errors of different properties are each other's strangers, so that their squares add up. */
export function companySavings(worked: readonly WorkedProperty[], accounts: readonly KnownAccount[], month: string): CompanySavings {
  const told = worked.flatMap((property) => {
    const avoided = savedOf(property, accounts, month);
    return avoided ? [{ ...avoided, money: avoided.litres * (property.pricePerLitre ?? 0) }] : [];
  });
  return {
    savedLitres: told.reduce((sum, { litres }) => sum + litres, 0),
    halfWidthLitres: Math.hypot(...told.map(({ halfWidthLitres }) => halfWidthLitres)),
    savedMoney: told.reduce((sum, { money }) => sum + money, 0),
    toldOf: told.length,
    notToldOf: worked.length - told.length,
  };
}

function savedOf({ id, firstWork }: WorkedProperty, accounts: readonly KnownAccount[], month: string) {
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
