// Properties whose accounts are computed in columns, and the two ways of computing them.
import type { SettingsFact } from '@rillbook/irrigation/settings/settings-fact.js';
import type { AccountInput } from '@rillbook/metering/account/account-input.js';
import { accountOfMonth } from '@rillbook/metering/account/compute-month-account.js';
import type { MonthAccount } from '@rillbook/metering/account/month-account.js';
import { preparedMonths } from '@rillbook/metering/account/needed/prepared-months.js';
import type { AccountColumns } from '@rillbook/metering/columns/account-columns.js';
import { accountInColumns } from '@rillbook/metering/columns/account-in-columns.js';
import { weatherSeries } from '@rillbook/metering/volumes/weather-series.js';
import fc from 'fast-check';
import { someProperty } from './random-world.mjs';

const NO_SENSOR = { rainSensor: null, rainSensorMm: null };
const A_CONTRACT = { from: 'contract', litresPerMonth: Array.from({ length: 12 }, (_, month) => 1e5 + 1e4 * month) } as const;

/** Facts of a timer that runs, as if nothing had been on record of it before an instant. */
function knownSince(facts: readonly SettingsFact[], since: string): readonly SettingsFact[] {
  const running = facts.find(({ state }) => state === 'on');
  if (!running) return facts;
  return [{ ...running, effectiveAt: since }, ...facts.filter(({ effectiveAt }) => effectiveAt > since)];
}

function recordedFacts({ controllers, month }: AccountInput, recorded: string | null): readonly SettingsFact[] {
  const facts = controllers[0]!.facts.filter(({ state }) => state !== 'weather');
  return recorded === null ? facts : knownSince(facts, `${month}-${recorded}T09:00`);
}

/** A property of the usual kind: no hand-watered zone, no sensor, no timer that goes by the weather; some days of filled weather. */
export const plainProperty: fc.Arbitrary<AccountInput> = fc
  .record({
    input: someProperty as fc.Arbitrary<AccountInput>,
    allowance: fc.constantFrom('ordinance', 'contract', null),
    isFilled: fc.boolean(),
    timers: fc.constantFrom(1, 2),
    assumed: fc.subarray(['plantFactor', 'density', 'rawMm', 'duLq', 'areaM2', 'flowLPerMin'] as const),
    establishedShare: fc.constantFrom(undefined, 0.25),
    notRead: fc.constantFrom(0, 0, 0.5, 2, 9),
    recorded: fc.constantFrom(null, null, '02', '03', '05'),
    isDerived: fc.boolean(),
    isCold: fc.constantFrom(false, false, true),
  })
  .map(({ input, allowance, isFilled, timers, assumed, establishedShare, notRead, recorded, isDerived, isCold }) => ({
    ...input,
    // The meter is first read after the month began: what passed before is filled by need, or not known where it is too much.
    meters: input.meters.map((meter) => ({
      ...meter,
      intervals: meter.intervals.map((each, at) => (at === 0 ? { ...each, fromLocalDay: each.fromLocalDay + notRead } : each)),
    })),
    allowance: allowance === 'contract' ? A_CONTRACT : allowance && input.allowance,
    days: input.days.map((day, at) => ({
      ...day,
      ...(isFilled && at % 7 === 0 && { filledFrom: 'neighbour' as const }),
      // Days on which nothing evaporates weigh nothing.
      ...(isCold && day.date >= `${input.month}-01` && day.date < `${input.month}-06` && { etoMm: 0 }),
    })),
    zones: input.zones.map((zone, at) => ({
      ...zone,
      handWatered: false,
      meterId: null,
      controllerId: timers > 1 && at === 1 ? 'c2' : 'c1',
      assumed: at === 0 ? assumed : [],
      ...(isDerived && at % 2 === 0 && { flowSource: 'derived' as const }),
      ...(at === 0 && establishedShare !== undefined && { establishedShare }),
    })),
    // What one or both timers are set to is on record since a day of the month; before it the need fills in, if that is not too much.
    controllers: ['c1', 'c2', 'c3'].slice(0, timers + 1).map((id, at) => ({
      ...input.controllers[0]!,
      id,
      traits: { ...input.controllers[0]!.traits, ...NO_SENSOR },
      facts: recordedFacts(input, at === 0 || recorded === '02' ? recorded : null),
    })),
  }));

/** A month's account as objects and in columns; null where it is not of the usual kind. */
export function inColumns(input: AccountInput): { readonly account: MonthAccount; readonly columns: AccountColumns } | null {
  const prepared = preparedMonths([input], weatherSeries(input.days))[0]!;
  const columns = accountInColumns(input, prepared);
  return columns && { account: accountOfMonth(input, prepared), columns };
}
