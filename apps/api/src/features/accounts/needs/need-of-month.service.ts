import { daysOfMonth } from '@rillbook/irrigation/calendar/local-date.js';
import type { AccountZone } from '@rillbook/metering/account/account-input.js';
import { whatIfYear } from '@rillbook/metering/what-if/what-if-year.js';
import { Temporal } from 'temporal-polyfill';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { EtoSeries } from '../gather/eto-series.js';
import { propertyFacts } from '../gather/property-facts.repository.js';
import { stagesOfZones } from '../gather/year-of-zones.js';

/** Years of the station's own record that are taken together; more would reach back to another climate and other plants. */
const MOST_YEARS = 5;

/** What a zone needs on a day of a month, as its account takes it. */
export interface ZoneNeed {
  readonly zone: AccountZone;
  /** through the valve [L/d] */
  readonly litresPerDay: number;
  /** what the plants use, rain or not [mm/d] */
  readonly useMmPerDay: number;
}

/** The needs of a property's zones in one month, and the months of the record that they are the mean of. */
export interface NeedOfMonth {
  readonly months: readonly string[];
  readonly zones: ReadonlyMap<string, ZoneNeed>;
}

/**
 * What the zones of a property need in a month: that month's own weather where it is over, else the mean of the same month in the years on
 * record. Young plants count as they are in the month itself.
 *
 * @returns null where no such month has all its weather
 */
export async function needOfMonth(
  tx: OrganizationTransaction,
  property: { readonly id: string; readonly weatherStationId: string | null },
  month: string,
  today: string,
): Promise<NeedOfMonth | null> {
  if (property.weatherStationId === null) return null;
  const eto = await EtoSeries.of(tx, property.weatherStationId);
  const months = yearsBefore(month, today.slice(0, 7)).filter((each) => etoPerDay(eto, each) !== null);
  if (!months.length) return null;
  const zones = stagesOfZones(await propertyFacts.zonesAndMeters(tx, property.id), [month])[0]?.zones ?? [];
  const spans = months.map((each) => ({ month: each, through: `${each}-${String(daysOfMonth(each).days).padStart(2, '0')}` }));
  const answer = whatIfYear(eto.weather, spans)(zones);
  const eachDay = mean(months.map((each) => etoPerDay(eto, each) ?? 0));
  const needs = zones.flatMap((zone, at) => {
    const litres = answer.zones[at]?.litresByMonth ?? [];
    if (litres.some((each) => each === null)) return [];
    const litresPerDay = mean(litres.map((each, index) => (each ?? 0) / daysOfMonth(months[index]!).days));
    return [[zone.id, { zone, litresPerDay, useMmPerDay: eachDay * zone.plantFactor * zone.density * zone.shade }] as const];
  });
  return { months, zones: new Map(needs) };
}

function yearsBefore(month: string, thisMonth: string): string[] {
  if (month < thisMonth) return [month];
  const asked = Temporal.PlainYearMonth.from(month);
  const last = month === thisMonth ? 1 : asked.year - Temporal.PlainYearMonth.from(thisMonth).year;
  return Array.from({ length: MOST_YEARS }, (_, back) => asked.subtract({ years: Math.max(0, last) + back }).toString()).filter(
    (each) => each < thisMonth,
  );
}

function etoPerDay(eto: EtoSeries, month: string): number | null {
  const { firstDay, days } = daysOfMonth(month);
  const sum = eto.sumOf('etoMm', firstDay, days);
  return sum === null ? null : sum / days;
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
