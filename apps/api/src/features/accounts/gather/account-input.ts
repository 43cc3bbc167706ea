import { dateOfDayNumber, dayNumberOfDate, daysOfMonth } from '@rillbook/irrigation/calendar/local-date.js';
import type { RainPause } from '@rillbook/irrigation/settings/rain-pause.js';
import type { SettingsFact } from '@rillbook/irrigation/settings/settings-fact.js';
import type { AccountController, AccountInput, AccountMeter, AccountZone, Allowance } from '@rillbook/metering/account/account-input.js';
import { WARM_UP_DAYS } from '@rillbook/agronomy/water-balance/irrigation-need.js';
import { programFromKept } from '../../settings/program-from-kept.service.js';
import { clockChanges } from './clock-changes.js';
import type { EtoSeries } from './eto-series.js';
import { type MeterChain, measuresBetween } from './meter-chains.js';
import type { PropertyFact, PropertyFacts } from './property-facts.js';
import { zoneInput } from './zone-input.js';

/** A place of measuring with all volumes it has on record. */
export interface MeteredChain {
  readonly chain: MeterChain;
  readonly intervals: AccountMeter['intervals'];
  /** what passes in winter when nothing is watered, for a mixed meter; null when no such month is known [L/d] */
  readonly winterLitresPerDay: number | null;
}

const allowanceOf = (property: PropertyFact): Allowance | null => {
  if (property.allowanceFrom === 'contract' && property.allowanceLitresPerMonth)
    return { from: 'contract', litresPerMonth: property.allowanceLitresPerMonth };
  if (property.allowanceFrom === 'ordinance' && property.allowanceEtaf !== null)
    return { from: 'ordinance', etaf: property.allowanceEtaf, specialLandscapeAreaM2: property.specialLandscapeAreaM2 ?? 0 };
  return null;
};

function controllersOf(facts: PropertyFacts, monthEnd: string): AccountController[] {
  return facts.controllers.map((controller) => ({
    id: controller.id,
    traits: { ...controller, adjustScope: controller.adjustScope ?? 'program' },
    facts: facts.settings
      .filter((fact) => fact.controllerId === controller.id && fact.localTime.slice(0, 10) <= monthEnd)
      .map(
        (fact): SettingsFact => ({
          effectiveAt: fact.localTime,
          record: fact.record,
          state: fact.state,
          programs: fact.programs.map(programFromKept),
        }),
      ),
    pauses: facts.pauses
      .filter((pause) => pause.controllerId === controller.id && pause.from.slice(0, 10) <= monthEnd)
      .map((pause): RainPause => ({ from: pause.from, until: pause.until })),
  }));
}

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

/** A zone whose meter was not there yet, or no longer, went unmetered in that month. */
function inMonth(zone: AccountZone, measuring: ReadonlySet<string>): AccountZone {
  if (zone.meterId === null || zone.meterId === 'none' || measuring.has(zone.meterId)) return zone;
  return { ...zone, meterId: measuring.size ? 'none' : null };
}

/** One property's input for one month, as the pure account takes it. */
export function accountInput(
  facts: PropertyFacts,
  metered: readonly MeteredChain[],
  eto: EtoSeries,
  month: string,
  today: string,
): AccountInput {
  const { firstDay, days } = daysOfMonth(month);
  const lastDay = firstDay + days - 1;
  const measuring = metered.filter(({ chain }) => measuresBetween(chain, firstDay, lastDay));
  const through = lastCompleteDay({ firstDay, lastDay }, dayNumberOfDate(today) - 1, eto, measuring);
  const chainOf = (meterId: string): string =>
    metered.find(({ chain }) => chain.meters.some((meter) => meter.id === meterId))?.chain.id ?? meterId;
  const ids = new Set(measuring.map(({ chain }) => chain.id));
  return {
    month,
    through: through === null ? null : dateOfDayNumber(through),
    days: eto.between(firstDay - WARM_UP_DAYS, lastDay),
    zones: facts.zones.map((zone) => inMonth(zoneInput(zone, chainOf, month), ids)),
    controllers: controllersOf(facts, dateOfDayNumber(lastDay)),
    meters: measuring.map(({ chain, intervals, winterLitresPerDay }) => ({
      id: chain.id,
      kind: chain.meters.at(-1)!.kind,
      indoorLitresPerDay: chain.meters.at(-1)!.indoorLPerDay,
      winterLitresPerDay,
      intervals: intervals.filter((interval) => interval.toLocalDay > firstDay && interval.fromLocalDay < lastDay + 1),
    })),
    allowance: allowanceOf(facts.property),
    clockChanges: clockChanges(facts.property.timeZone, firstDay - 1, lastDay),
  };
}
