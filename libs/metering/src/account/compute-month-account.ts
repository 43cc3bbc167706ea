import { dateOfDayNumber, dayNumberOfDate, daysOfMonth } from '@rillbook/irrigation/calendar/local-date.js';
import { type ControllerReplay, replayController } from '@rillbook/irrigation/settings/replay-controller.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import { absence } from '../volumes/absence.js';
import { absent, type Figure } from '../volumes/figure.js';
import { weatherSeries } from '../volumes/weather-series.js';
import type { AccountInput, AccountMeter } from './account-input.js';
import { type ComputedZone, controllerLine, zoneLine } from './account-lines.js';
import { accountNotes } from './account-notes.js';
import { assignScope, type ScopedZone } from './assign-scope.js';
import { type MeteredOfMeter, meteredOfMeter } from './metered-of-meter.js';
import type { MonthAccount } from './month-account.js';
import { type CoveredMonth, neededOfZone } from './needed-of-zone.js';
import { programmedOfZone } from './programmed-of-zone.js';
import { meterVolumes, propertyVolumes } from './property-and-meters.js';

/**
 * The month account of one property and month: allowed, needed, programmed, metered, and the gaps between them.
 *
 * M − A = (M − P) + (P − N) + (N − A), for the property and for each meter, wherever all four exist.
 *
 * @param input - Weather, zones, controllers with their settings, meters with their intervals, and the allowance. [code]
 * @returns The account; what cannot be known is null with its reason. [L]
 * @throws {DomainError} With the offending zone, meter, day or setting where an input is no possible value.
 */
export function computeMonthAccount(input: AccountInput): MonthAccount {
  const month = coveredMonth(input);
  const scoped = assignScope(input.zones, input.meters);
  const zones = month.days > 0 ? computedZones(input, month, scoped) : scoped.map(nothingYet);
  const meters = input.meters.map((meter) => [meter.id, month.days > 0 ? metered(meter, month, zones) : NO_WATER_YET] as const);
  const figures = { zones, meters, allowance: input.allowance, month };
  const property = propertyVolumes(figures);
  return {
    month: input.month,
    firstDate: dateOfDayNumber(month.firstDay),
    throughDate: month.days > 0 ? dateOfDayNumber(month.firstDay + month.days - 1) : null,
    daysCovered: month.days,
    daysInMonth: month.daysInMonth,
    property,
    meters: meters.map(([id, each]) => meterVolumes(id, each, figures)),
    controllers: input.controllers.map(({ id }) => controllerLine(id, zones)),
    zones: zones.map(zoneLine),
    notes: month.days > 0 ? accountNotes({ input, month, property, meters }) : [],
  };
}

const NO_DAY: Figure = absent(absence('no-complete-day'));
const NO_WATER_YET: MeteredOfMeter = { figure: NO_DAY, meteredThrough: null, contradictions: [] };

function nothingYet(zone: ScopedZone): ComputedZone {
  return { ...zone, needed: { figure: NO_DAY, byDay: null }, programmed: { figure: NO_DAY, runs: null, minutes: null, programs: [] } };
}

function coveredMonth(input: AccountInput): CoveredMonth {
  const { firstDay, days: daysInMonth } = daysOfMonth(input.month);
  const endDay = input.through === null ? firstDay : Math.min(dayNumberOfDate(input.through) + 1, firstDay + daysInMonth);
  const days = Math.max(0, endDay - firstDay);
  const series = weatherSeries(input.days, firstDay, firstDay + days);
  const eto = series.etoMm.slice(firstDay - series.firstDay);
  const known = eto.filter((value) => value !== null);
  // A day of unknown weather weighs as much as the mean of the others.
  const mean = known.length > 0 ? known.reduce((sum, value) => sum + value, 0) / known.length : 1;
  return { month: input.month, firstDay, days, daysInMonth, series, etWeights: eto.map((value) => value ?? mean) };
}

function computedZones(input: AccountInput, month: CoveredMonth, scoped: readonly ScopedZone[]): readonly ComputedZone[] {
  const { firstDay, days } = month;
  const { clockChanges } = input;
  const replays = new Map(
    input.controllers.map(({ id, traits, facts, pauses }) => [
      id,
      replayController({ firstDay, days, facts, pauses, traits, clockChanges }),
    ]),
  );
  return scoped.map((each) => {
    const needed = neededOfZone(each.zone, month);
    return { ...each, needed, programmed: programmedOfZone(each.zone, month, replayOf(each, replays), needed) };
  });
}

function replayOf({ zone }: ScopedZone, replays: ReadonlyMap<string, ControllerReplay>): ControllerReplay | null {
  if (zone.controllerId === null) return null;
  const replay = replays.get(zone.controllerId);
  if (!replay) throw new DomainError('ZONE_CONTROLLER_UNKNOWN', { zoneId: zone.id, controllerId: zone.controllerId });
  return replay;
}

function metered(meter: AccountMeter, month: CoveredMonth, zones: readonly ComputedZone[]): MeteredOfMeter {
  const own = zones.filter(({ meterId }) => meterId === meter.id).map(({ needed }) => needed.byDay);
  const known = own.filter((byDay) => byDay !== null);
  const unassigned = zones.some(({ scope }) => scope === 'unassigned');
  const whole = own.length > 0 && known.length === own.length && !unassigned;
  const sums = month.etWeights.map((_, day) => known.reduce((sum, byDay) => sum + (byDay[day] ?? 0), 0));
  return meteredOfMeter(meter, month, whole ? sums : null);
}
