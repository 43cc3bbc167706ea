import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import type { SensorReplay } from '@rillbook/irrigation/settings/replay/replay-with-sensor.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import { absence } from '../volumes/absence.js';
import { absent, type Figure } from '../volumes/figure.js';
import type { NeededDepths } from '../volumes/needing-zone.js';
import { weatherSeries } from '../volumes/weather-series.js';
import type { AccountFacts, AccountInput, AccountMeter } from './account-input.js';
import { type ComputedZone, controllerLine, settingsGapOfZone, zoneLine } from './account-lines.js';
import { accountNotes } from './account-notes.js';
import type { CoveredMonth } from './needed/covered-month.js';
import { assignScope, type ScopedZone } from './assign-scope.js';
import { type MeteredOfMeter, meteredOfMeter } from './metered-of-meter.js';
import type { MonthAccount } from './month-account.js';
import { type NeededOfZone, neededOfZone } from './needed/needed-of-zone.js';
import { type PreparedMonth, preparedMonths } from './needed/prepared-months.js';
import { replayOfMonth } from './needed/replay-of-month.js';
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
  const [prepared] = preparedMonths([input], weatherSeries(input.days));
  return accountOfMonth(input, prepared as PreparedMonth);
}

/**
 * The month account of a month that was prepared together with others of the same property: the same account as of the month alone.
 *
 * @param input - Zones, controllers with their settings, meters with their intervals, and the allowance. [code]
 * @param prepared - The month with its weather and what its zones needed. [mm]
 * @returns The account; what cannot be known is null with its reason. [L]
 * @throws {DomainError} With the offending zone, meter, day or setting where an input is no possible value.
 */
export function accountOfMonth(input: AccountFacts, prepared: PreparedMonth): MonthAccount {
  const month = prepared.covered;
  const scoped = assignScope(input.zones, input.meters);
  const zones = month.days > 0 ? computedZones(input, prepared, scoped) : scoped.map(nothingYet);
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
    meters: meters.map(([id, each]) => meterVolumes(id, each, figures, property)),
    controllers: input.controllers.map(({ id }) => controllerLine(id, zones)),
    zones: zones.map(zoneLine),
    notes: month.days > 0 ? accountNotes({ input, month, property, meters }) : [],
  };
}

const NO_DAY: Figure = absent(absence('no-complete-day'));
const NO_NEED: NeededOfZone = { figure: NO_DAY, byDay: null };
const NO_WATER_YET: MeteredOfMeter = { figure: NO_DAY, meteredThrough: null, contradictions: [] };

function nothingYet(zone: ScopedZone): ComputedZone {
  return { ...zone, needed: NO_NEED, programmed: { figure: NO_DAY, runs: null, minutes: null, programs: [] }, settingsGap: null };
}

function computedZones(input: AccountFacts, prepared: PreparedMonth, scoped: readonly ScopedZone[]): readonly ComputedZone[] {
  const { covered: month, depths } = prepared;
  const replays = new Map(
    input.controllers.map((controller) => [controller.id, replayOfMonth(controller, prepared, input.clockChanges)] as const),
  );
  return scoped.map((each, at) => {
    const needed = neededOfZone(each.zone, depths[at] as NeededDepths, month);
    const programmed = programmedOfZone(each.zone, month, replayOf(each, replays), needed);
    const settingsGap = settingsGapOfZone(needed.figure, programmed.figure);
    // Not a spread: that makes an object property by property, and there are many zones and months.
    return { zone: each.zone, scope: each.scope, meterId: each.meterId, needed, programmed, settingsGap };
  });
}

function replayOf({ zone }: ScopedZone, replays: ReadonlyMap<string, SensorReplay>): SensorReplay | null {
  if (zone.controllerId === null) return null;
  const replay = replays.get(zone.controllerId);
  if (!replay) throw new DomainError('ZONE_CONTROLLER_UNKNOWN', { zoneId: zone.id, controllerId: zone.controllerId });
  return replay;
}

function metered(meter: AccountMeter, month: CoveredMonth, zones: readonly ComputedZone[]): MeteredOfMeter {
  const own = zones.filter(({ meterId }) => meterId === meter.id);
  const unassigned = zones.some(({ scope }) => scope === 'unassigned');
  return meteredOfMeter(meter, month, () => (own.length > 0 && !unassigned ? neededByDay(own, month) : null));
}

function neededByDay(zones: readonly ComputedZone[], month: CoveredMonth): readonly number[] | null {
  const known = zones.map(({ needed }) => needed.byDay).filter((byDay) => byDay !== null);
  if (known.length < zones.length) return null;
  return Array.from(month.etWeights, (_, day) => known.reduce((sum, byDay) => sum + (byDay[day] ?? 0), 0));
}
