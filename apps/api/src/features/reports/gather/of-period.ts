import { Temporal } from 'temporal-polyfill';
import type { accountsOfProperty } from '../../accounts/months/month-account.loader.js';

type Account = Awaited<ReturnType<ReturnType<typeof accountsOfProperty.of>['load']>>[number];

/** The instant at which a month was over, on the clocks of a place. */
export function endOf(untilMonth: string, timeZone: string): Date {
  const next = Temporal.PlainYearMonth.from(untilMonth).add({ months: 1 }).toPlainDate({ day: 1 });
  return new Date(next.toZonedDateTime(timeZone).epochMilliseconds);
}

/**
 * The price of a litre over some months, each with the weight of what it used; null where the price of one of them is not known. [money/L]
 */
export function priceIn(months: readonly Account[]): number | null {
  let [litres, money, latest]: [number, number, number | null] = [0, 0, null];
  for (const { detail } of months) {
    if (detail.pricePerLitre === null) return null;
    const used = detail.account.property.metered.litres ?? 0;
    litres += used;
    money += used * detail.pricePerLitre;
    latest = detail.pricePerLitre;
  }
  return litres > 0 ? money / litres : latest;
}
