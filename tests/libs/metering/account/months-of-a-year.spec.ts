import { dateOfDayNumber, dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { AccountInput } from '@rillbook/metering/account/account-input.js';
import { computeMonthAccount } from '@rillbook/metering/account/compute-month-account.js';
import type { MonthAccount } from '@rillbook/metering/account/month-account.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aController, aFact, aMeter, aProgram, aProperty, aZone } from '../a-property.js';

const FROM = dayNumberOfDate('2025-10-03');
const YEAR = dayNumberOfDate('2026-01-01');
const END = dayNumberOfDate('2027-01-01');
const MONTHS = Array.from({ length: 12 }, (_, at) => `2026-${String(at + 1).padStart(2, '0')}`);
const lastOf = (month: string) => new Date(Date.UTC(Number(month.slice(0, 4)), Number(month.slice(5)), 0)).toISOString().slice(0, 10);
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

interface Year {
  readonly etoOfMonth: readonly number[];
  readonly rain: readonly number[];
  readonly cuts: readonly number[];
  readonly litres: readonly number[];
}

const someYear: fc.Arbitrary<Year> = fc.record({
  etoOfMonth: fc.array(number(0.5, 8), { minLength: 12, maxLength: 12 }),
  rain: fc.array(fc.oneof(fc.constant(0), fc.constant(0), number(0, 25)), { minLength: 37, maxLength: 37 }),
  cuts: fc.uniqueArray(number(YEAR + 1, END - 1), { minLength: 1, maxLength: 14 }),
  litres: fc.array(number(0, 50_000), { minLength: 15, maxLength: 15 }),
});

/** The twelve accounts of 2026 with all weather; intervals that cut the year wherever they like, and cover it. */
function accountsOf({ etoOfMonth, rain, cuts, litres }: Year): readonly MonthAccount[] {
  const ends = [YEAR, ...cuts.toSorted((a, b) => a - b), END];
  const intervals = ends.slice(1).map((toLocalDay, at) => ({
    fromLocalDay: ends[at] ?? YEAR,
    toLocalDay,
    litres: litres[at] ?? 0,
    sdLitres: 0,
    source: 'readings' as const,
  }));
  const days = Array.from({ length: END - FROM }, (_, at) => {
    const date = dateOfDayNumber(FROM + at);
    return { date, etoMm: etoOfMonth[Number(date.slice(5, 7)) - 1] ?? 0, rainMm: rain[at % rain.length] ?? 0, etoRelativeSd: 0.05 };
  });
  return MONTHS.map((month) => computeMonthAccount(ofMonth(month, { days, meters: [aMeter(intervals)] })));
}

const ofMonth = (month: string, changes: Partial<AccountInput>): AccountInput =>
  aProperty({
    month,
    through: lastOf(month),
    controllers: [aController([aFact([aProgram({ 1: 30 })], { effectiveAt: '2025-01-01T00:00' })])],
    zones: [aZone({ plantFactor: 0.7, rawMm: 25, duLq: 0.7 })],
    ...changes,
  });

const sum = (accounts: readonly MonthAccount[], volume: 'needed' | 'programmed' | 'metered') =>
  accounts.reduce((total, { property }) => total + (property[volume].litres ?? Number.NaN), 0);

describe('the months of a year', () => {
  it('hold all water that was metered in it, however readings cut them', () => {
    fc.assert(
      fc.property(someYear, (year) => {
        const metered = year.litres.slice(0, year.cuts.length + 1).reduce((total, litres) => total + litres, 0);
        expect(Math.abs(sum(accountsOf(year), 'metered') - metered)).toBeLessThanOrEqual(1e-9 * Math.max(1, metered));
      }),
      { numRuns: 30 },
    );
  });

  it('need in a dry year what evapotranspiration takes: Kc x sum of ETo x area x multiplier', () => {
    fc.assert(
      fc.property(someYear, (year) => {
        const daysOf = (at: number) => Number(lastOf(MONTHS[at] ?? '').slice(8));
        const etoMm = year.etoOfMonth.reduce((total, mm, at) => total + mm * daysOf(at), 0);
        // 0.7 of ETo over 100 m2, 1/(0.4 + 0.6 x 0.7).
        const expected = (0.7 * etoMm * 100) / 0.82;
        expect(sum(accountsOf({ ...year, rain: [0] }), 'needed')).toBeCloseTo(expected, 4);
      }),
      { numRuns: 10 },
    );
  });

  it('need day by day what a balance kept through the whole year needs, where the root zone has forgotten its start', () => {
    fc.assert(
      fc.property(someYear, (year) => {
        // With at least 0.7 x 2 mm a day, and a storm that fills the root zone each 37 days, ninety days forget any start.
        const forgetful = { ...year, etoOfMonth: year.etoOfMonth.map((mm) => Math.max(2, mm)), rain: [60, ...year.rain.slice(1)] };
        expect(sum(accountsOf(forgetful), 'needed')).toBeCloseTo(throughTheYear(forgetful), 4);
      }),
      { numRuns: 20 },
    );
  });

  it('program what starts, minutes and flow make: 365 x 30 min x 20 L/min', () => {
    expect(sum(accountsOf({ etoOfMonth: new Array<number>(12).fill(4), rain: [0], cuts: [], litres: [0] }), 'programmed')).toBeCloseTo(
      365 * 30 * 20,
      6,
    );
  });
});

/** The balance of the domain in plain words, once through all days: rain counts beyond 0.2 ETo as far as there is room; then ETc; then need. */
function throughTheYear({ etoOfMonth, rain }: Year): number {
  const [raw, coefficient] = [25, 0.7];
  let depletion = raw;
  let need = 0;
  for (let day = FROM; day < END; day += 1) {
    const eto = etoOfMonth[Number(dateOfDayNumber(day).slice(5, 7)) - 1] ?? 0;
    const fallen = rain[(day - FROM) % rain.length] ?? 0;
    depletion = Math.max(0, depletion + coefficient * eto - (fallen > 0.2 * eto ? fallen : 0));
    const irrigation = Math.max(0, depletion - raw);
    depletion -= irrigation;
    if (day >= YEAR) need += irrigation;
  }
  return (need * 100) / 0.82;
}
