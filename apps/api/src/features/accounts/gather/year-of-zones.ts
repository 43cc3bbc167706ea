import { daysOfMonth } from '@rillbook/irrigation/calendar/local-date.js';
import type { AccountZone } from '@rillbook/metering/account/account-input.js';
import { DAYS_BEFORE_MONTH } from '@rillbook/metering/volumes/weather-series.js';
import { Temporal } from 'temporal-polyfill';
import type { EtoSeries } from './eto-series.js';
import { meterChains, measuresBetween } from './meter-chains.js';
import type { PropertyFacts } from './property-facts.js';
import { zonesByMonth } from './zones-by-month.js';

const MONTHS = 12;

/** The twelve months, as 'YYYY-MM' and oldest first, that end with one, or with the last that is over where that one is not. */
export function wholeYearUntil(until: string | null, today: string): string[] {
  const over = Temporal.PlainYearMonth.from(today.slice(0, 7)).subtract({ months: 1 });
  const asked = until === null ? over : Temporal.PlainYearMonth.from(until);
  const last = Temporal.PlainYearMonth.compare(asked, over) > 0 ? over : asked;
  return Array.from({ length: MONTHS }, (_, month) => last.subtract({ months: MONTHS - 1 - month }).toString());
}

/** Months in which the zones were the same, one after the other. */
export interface StageOfZones {
  readonly months: string[];
  readonly zones: readonly AccountZone[];
}

/** The zones of some months as the accounts of those months take them: one stage where no plants are young and no meter came or went. */
export function stagesOfZones({ zones, meters }: Pick<PropertyFacts, 'zones' | 'meters'>, months: readonly string[]): StageOfZones[] {
  const chains = meterChains(meters);
  const zonesOf = zonesByMonth(zones, chains);
  const stages: StageOfZones[] = [];
  for (const month of months) {
    const { firstDay, days } = daysOfMonth(month);
    const present = zonesOf(
      month,
      chains.filter((chain) => measuresBetween(chain, firstDay, firstDay + days - 1)),
    );
    const before = stages.at(-1);
    if (before && isSame(before.zones, present)) before.months.push(month);
    else stages.push({ months: [month], zones: present });
  }
  return stages;
}

const isSame = (one: readonly AccountZone[], other: readonly AccountZone[]): boolean =>
  one === other || JSON.stringify(one) === JSON.stringify(other);

/** The days that the need of some months depends on: the root zone's balance begins before them. */
export function weatherOfMonths(eto: EtoSeries, months: readonly string[]) {
  const last = daysOfMonth(months.at(-1)!);
  return eto.between(daysOfMonth(months[0]!).firstDay - DAYS_BEFORE_MONTH, last.firstDay + last.days - 1);
}
