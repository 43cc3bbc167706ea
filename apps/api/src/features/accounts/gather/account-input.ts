import { dateOfDayNumber, dayNumberOfDate, daysOfMonth } from '@rillbook/irrigation/calendar/local-date.js';
import type { RainPause } from '@rillbook/irrigation/settings/rain-pause.js';
import type { SettingsFact } from '@rillbook/irrigation/settings/settings-fact.js';
import type { AccountController, AccountFacts, AccountMeter, Allowance } from '@rillbook/metering/account/account-input.js';
import { WARM_UP_DAYS } from '@rillbook/agronomy/water-balance/irrigation-need.js';
import { programFromKept } from '../../settings/program-from-kept.service.js';
import { clockChanges } from './clock-changes.js';
import type { EtoSeries } from './eto-series.js';
import { type MeterChain, measuresBetween } from './meter-chains.js';
import type { PauseFact, PropertyFact, PropertyFacts, SettingsFactRow } from './property-facts.js';
import { zonesByMonth } from './zones-by-month.js';

/** A place of measuring with all volumes it has on record. */
export interface MeteredChain {
  readonly chain: MeterChain;
  readonly intervals: AccountMeter['intervals'];
}

const allowanceOf = (property: PropertyFact): Allowance | null => {
  if (property.allowanceFrom === 'contract' && property.allowanceLitresPerMonth)
    return { from: 'contract', litresPerMonth: property.allowanceLitresPerMonth };
  if (property.allowanceFrom === 'ordinance' && property.allowanceEtaf !== null)
    return { from: 'ordinance', etaf: property.allowanceEtaf, specialLandscapeAreaM2: property.specialLandscapeAreaM2 ?? 0 };
  return null;
};

/** The controllers of a property as they were known at the end of a month: the same object for months between which nothing was set. */
function controllersUntil(facts: PropertyFacts): (monthEnd: string) => readonly AccountController[] {
  const settings = facts.settings.map((fact) => ({
    controllerId: fact.controllerId,
    on: fact.localTime.slice(0, 10),
    fact: settingsFact(fact),
  }));
  const pauses = facts.pauses.map((pause) => ({ controllerId: pause.controllerId, on: pause.from.slice(0, 10), pause: rainPause(pause) }));
  const known = new Map<string, readonly AccountController[]>();
  return (monthEnd) => {
    const [until, paused] = [settings.filter(({ on }) => on <= monthEnd), pauses.filter(({ on }) => on <= monthEnd)];
    const key = `${until.length} ${paused.length}`;
    const present = known.get(key);
    if (present) return present;
    const controllers = facts.controllers.map((controller) => ({
      id: controller.id,
      traits: { ...controller, adjustScope: controller.adjustScope ?? ('program' as const) },
      facts: until.flatMap(({ controllerId, fact }) => (controllerId === controller.id ? [fact] : [])),
      pauses: paused.flatMap(({ controllerId, pause }) => (controllerId === controller.id ? [pause] : [])),
    }));
    known.set(key, controllers);
    return controllers;
  };
}

/** The controllers of a property with everything that is on record of them. */
export const controllersOf = (facts: PropertyFacts): readonly AccountController[] => controllersUntil(facts)('9999-12-31');

/** By row: what is laid out of a program is kept with it, whoever asks for the property's controllers. */
const knownFacts = new WeakMap<SettingsFactRow, SettingsFact>();

function settingsFact(row: SettingsFactRow): SettingsFact {
  const present = knownFacts.get(row);
  if (present) return present;
  const fact = { effectiveAt: row.localTime, record: row.record, state: row.state, programs: row.programs.map(programFromKept) };
  knownFacts.set(row, fact);
  return fact;
}

const rainPause = (pause: PauseFact): RainPause => ({ from: pause.from, until: pause.until });

/** The last day that weather and, where meters were read in the month, all meters cover: the four volumes cover the same days. */
function lastCompleteDay(
  month: { firstDay: number; lastDay: number },
  yesterday: number,
  eto: EtoSeries,
  metered: readonly MeteredChain[],
): number | null {
  // A month that is over is a whole month; what is missing in it is filled or named by the account.
  if (yesterday >= month.lastDay) return month.lastDay;
  let last = Math.min(yesterday, eto.lastKnownDay ?? yesterday);
  for (const { intervals } of metered) {
    const until = Math.max(...intervals.map((interval) => interval.toLocalDay), Number.NEGATIVE_INFINITY);
    // Day 20.4 is day 20 under way: day 19 is the last that the meter has seen whole.
    const whole = Math.floor(until) - 1;
    if (whole >= month.firstDay) last = Math.min(last, whole);
  }
  return last >= month.firstDay ? last : null;
}

/** What one month of a property is computed from, and the weather that leads up to it by its version. */
export interface MonthInput extends AccountFacts {
  readonly weatherVersion: string;
}

/** An interval that crosses an end of the month is divided by the weather of all its days; notes tell whether weather began before them. */
function weatherVersion(eto: EtoSeries, from: number, until: number, meters: AccountFacts['meters']): string {
  const intervals = meters.flatMap((meter) => meter.intervals);
  const first = intervals.reduce((day, { fromLocalDay }) => Math.min(day, Math.floor(fromLocalDay)), from);
  const last = intervals.reduce((day, { toLocalDay }) => Math.max(day, Math.ceil(toLocalDay) - 1), until);
  return `${eto.firstDay < from} ${eto.versionBetween(first, last)}`;
}

/** One property's inputs by month, as the pure account takes them; what a mixed meter passes in winter is not known yet. */
export function accountInputs(
  facts: PropertyFacts,
  metered: readonly MeteredChain[],
  eto: EtoSeries,
  today: string,
): (month: string) => MonthInput {
  const controllers = controllersUntil(facts);
  const zones = zonesByMonth(
    facts.zones,
    metered.map(({ chain }) => chain),
  );
  const allowance = allowanceOf(facts.property);
  return (month) => {
    const { firstDay, days } = daysOfMonth(month);
    const lastDay = firstDay + days - 1;
    const measuring = metered.filter(({ chain }) => measuresBetween(chain, firstDay, lastDay));
    const through = lastCompleteDay({ firstDay, lastDay }, dayNumberOfDate(today) - 1, eto, measuring);
    const meters = measuring.map(({ chain, intervals }) => ({
      id: chain.id,
      kind: chain.meters.at(-1)!.kind,
      indoorLitresPerDay: chain.meters.at(-1)!.indoorLPerDay,
      winterLitresPerDay: null,
      intervals: intervals.filter((interval) => interval.toLocalDay > firstDay && interval.fromLocalDay < lastDay + 1),
    }));
    return {
      month,
      through: through === null ? null : dateOfDayNumber(through),
      zones: zones(
        month,
        measuring.map(({ chain }) => chain),
      ),
      controllers: controllers(dateOfDayNumber(lastDay)),
      meters,
      allowance,
      clockChanges: clockChanges(facts.property.timeZone, firstDay - 1, lastDay),
      weatherVersion: weatherVersion(eto, firstDay - WARM_UP_DAYS, lastDay, meters),
    };
  };
}
