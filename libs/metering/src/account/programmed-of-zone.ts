import type { ControllerReplay, UnknownDay } from '@rillbook/irrigation/settings/replay-controller.js';
import type { SensorReplay } from '@rillbook/irrigation/settings/replay-with-sensor.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import { defaultRelativeSd } from '../uncertainty/default-relative-sd.js';
import { inputKey } from '../uncertainty/input-share.js';
import { combined, type UncertainLitres } from '../uncertainty/uncertain-litres.js';
import { type Absence, absence } from '../volumes/absence.js';
import { absent, type Figure, known } from '../volumes/figure.js';
import { type FilledVolume, fillMissingDays } from '../volumes/fill-missing-days.js';
import type { AccountZone } from './account-input.js';
import type { CoveredMonth } from './needed/covered-month.js';
import { areaSd, type NeededOfZone } from './needed/needed-of-zone.js';

/** What the settings put out in one zone: the volume, and runs, minutes and programs of the days that are known. */
export interface ProgrammedOfZone {
  readonly figure: Figure;
  readonly runs: number | null;
  readonly minutes: number | null;
  readonly programs: readonly string[];
}

const NEITHER = { runs: null, minutes: null, programs: [] } as const;

/**
 * What the replayed settings would have put out in one zone, with what each uncertain input does to it; a zone watered by hand as told.
 *
 * Where a rain sensor's threshold is not known, minutes are the mean of those with and without the starts that it may have held back, and half
 * the difference is their standard deviation. Starts on days of unknown rain count, and that rain makes them unsure. A day on which the controller computes its own run times from weather or soil moisture counts as
 * the zone's need of that day, as an estimate.
 *
 * @param zone - The zone. [code]
 * @param month - The covered days and their ET weights. [mm]
 * @param replay - The replay of the zone's controller over the covered days, or null where it has none. [min]
 * @param needed - The zone's need, to fill unknown days by. [L]
 * @returns The volume, runs, minutes and programs. [L] and [min]
 * @throws {DomainError} `ZONE_FLOW_OUT_OF_DOMAIN` when a flow or a volume by hand is below zero or not finite.
 */
export function programmedOfZone(
  zone: AccountZone,
  month: CoveredMonth,
  replay: SensorReplay | null,
  needed: NeededOfZone,
): ProgrammedOfZone {
  if (zone.handWatered) return { figure: byHand(zone, month.days), ...NEITHER };
  if (!replay || zone.station === null) return { figure: absent(absence('no-controller', { zones: [zone.id] })), ...NEITHER };
  const water = waterOf(zone, zone.station, replay, needed);
  if (water.estimate && needed.figure.value === null) return { figure: absent(water.estimate), ...NEITHER };
  const filled = water.unknown.includes('settings-not-known') ? filledWater(water, month) : NOTHING_FILLED;
  if (filled.litres === null)
    return { figure: absent(absence('settings-not-known', { ...detailsOf(zone), missingShare: filled.missingShare })), ...NEITHER };
  // Of a month that its timer set itself from end to end no run is known.
  const noDayKnown = !water.unknown.includes(null);
  const facts = noDayKnown ? NEITHER : { runs: water.runs, minutes: water.minutes, programs: water.programs };
  return { figure: figureOf(zone, water, needed.figure.value, filled.filledLitres), ...facts };
}

const NOTHING_FILLED = { litres: 0, filledLitres: 0 } as const;

function filledWater(water: ZoneWater, month: CoveredMonth): FilledVolume {
  return fillMissingDays(
    water.unknown.map((reason, day) => ({
      litres: (water.minutesByDay[day] ?? 0) * (water.flow ?? 1) + estimateOfDay(water, day),
      knownShare: reason === 'settings-not-known' ? 0 : 1,
      etWeight: month.etWeights[day] ?? 1,
      neededLitres: water.neededByDay?.[day] ?? null,
    })),
  );
}

interface ZoneWater {
  readonly unknown: readonly (UnknownDay | null)[];
  readonly minutesByDay: readonly number[];
  readonly minutes: number;
  readonly runs: number;
  readonly programs: readonly string[];
  /** Standard deviation that comes from the rain sensor. [min] */
  readonly sensorSd: number;
  /** Standard deviation that comes from days whose rain is not known. [min] */
  readonly unknownRainSd: number;
  readonly flow: number | null;
  readonly estimate: Absence | null;
  /** Only where some day is unknown. [L] */
  readonly neededByDay: readonly number[] | null;
}

function waterOf(zone: AccountZone, station: number, replay: SensorReplay, needed: NeededOfZone): ZoneWater {
  const { unknown } = replay.most;
  const most = minutesOf(replay.most, station);
  const total = sum(most);
  const as = (other: ControllerReplay) => (other === replay.most ? most : minutesOf(other, station));
  const totalAs = (other: ControllerReplay) => (other === replay.most ? total : sum(minutesOf(other, station)));
  const least = as(replay.least);
  const leastTotal = totalAs(replay.least);
  const heldBack = totalAs(replay.withoutSensor) - total;
  const perhapsHeldBack = total - totalAs(replay.unsure);
  const sensorSd = Math.hypot((total - leastTotal) / 2, heldBack * defaultRelativeSd.rainSensor);
  return {
    unknown,
    minutesByDay: least === most ? most : most.map((minutes, day) => (minutes + (least[day] ?? 0)) / 2),
    minutes: (total + leastTotal) / 2,
    runs: (runsOf(replay.most, station) + runsOf(replay.least, station)) / 2,
    programs: replay.most.stations.get(station)?.programs ?? [],
    sensorSd,
    unknownRainSd: perhapsHeldBack * defaultRelativeSd.filled,
    flow: flowOf(zone),
    estimate: unknown.includes('settings-from-weather') ? absence('settings-from-weather', detailsOf(zone)) : null,
    neededByDay: unknown.some((reason) => reason !== null) ? needed.byDay : null,
  };
}

function minutesOf({ stations, unknown }: ControllerReplay, station: number): readonly number[] {
  const minutes = stations.get(station)?.minutes ?? [];
  return unknown.map((_, day) => minutes[day] ?? 0);
}

function runsOf({ stations }: ControllerReplay, station: number): number {
  return (stations.get(station)?.runs ?? []).reduce<number>((total, runs) => total + (runs ?? 0), 0);
}

function estimateOfDay({ unknown, neededByDay }: ZoneWater, day: number): number {
  return unknown[day] === 'settings-from-weather' ? (neededByDay?.[day] ?? 0) : 0;
}

function figureOf(zone: AccountZone, water: ZoneWater, needed: UncertainLitres | null, filledLitres: number): Figure {
  // Where nothing ran by a program there is nothing that a flow would tell.
  if (water.flow === null && !(water.estimate && water.minutes === 0)) return absent(absence('flow-not-known', { zones: [zone.id] }));
  const flow = water.flow ?? 0;
  const estimated = water.estimate ? water.unknown.reduce((total, _, day) => total + estimateOfDay(water, day), 0) : 0;
  const whole = water.minutes * flow + estimated;
  const stretch = whole > 0 ? 1 + filledLitres / whole : 1;
  const others = ofController(zone, filledLitres * defaultRelativeSd.filled, estimated * stretch * defaultRelativeSd.settingsFromWeather);
  // An estimate leans on what the need leans on: against the need only the controller's own error is left.
  const asNeeded = estimated > 0 && needed ? ([[(estimated * stretch) / sum(water.neededByDay ?? []), needed]] as const) : [];
  const replayed = throughValve(zone, water, flow * stretch);
  return known(combined([[1, replayed], ...asNeeded, ...others]), estimated + filledLitres, water.estimate);
}

function ofController({ controllerId }: AccountZone, filledSd: number, ownSd: number): readonly (readonly [number, UncertainLitres])[] {
  if (filledSd === 0 && ownSd === 0) return [];
  const parts = new Map([
    [inputKey('filledSettings', controllerId), filledSd],
    [inputKey('settingsFromWeather', controllerId), ownSd],
  ]);
  return [[1, { litres: 0, parts }]];
}

function sum(values: readonly number[]): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}

function flowOf(zone: AccountZone): number | null {
  const flow = zone.flowLPerMin;
  if (flow !== null && !(flow >= 0 && Number.isFinite(flow)))
    throw new DomainError('ZONE_FLOW_OUT_OF_DOMAIN', { zoneId: zone.id, flowLPerMin: flow });
  return flow;
}

function throughValve(zone: AccountZone, { minutes, sensorSd, unknownRainSd }: ZoneWater, flow: number): UncertainLitres {
  const litres = minutes * flow;
  const source = zone.assumed.includes('flowLPerMin') && zone.flowSource !== 'derived' ? 'assumed' : zone.flowSource;
  const relative = defaultRelativeSd.flow[source];
  // A flow derived from precipitation rate and area errs with the area, which need and allowance share.
  const ofFlow: readonly (readonly [string, number])[] =
    source === 'derived'
      ? [
          [inputKey('precipitationRate', zone.id), litres * relative],
          [inputKey('area', zone.id), litres * areaSd(zone)],
        ]
      : [[inputKey('flow', zone.id), litres * relative]];
  const parts = new Map(ofFlow);
  if (sensorSd !== 0) parts.set(inputKey('rainSensor', zone.controllerId), sensorSd * flow);
  // Where it did not rain on those days, more ran and more was needed: one input for both.
  if (unknownRainSd !== 0) parts.set(inputKey('filledWeather', null), unknownRainSd * flow);
  return { litres, parts };
}

function byHand(zone: AccountZone, days: number): Figure {
  const perWeek = zone.handLitresPerWeek;
  if (perWeek === null) return absent(absence('hand-volume-not-known', { zones: [zone.id] }));
  if (!(perWeek >= 0 && Number.isFinite(perWeek)))
    throw new DomainError('ZONE_FLOW_OUT_OF_DOMAIN', { zoneId: zone.id, handLitresPerWeek: perWeek });
  const litres = (perWeek * days) / 7;
  return known({ litres, parts: new Map([[inputKey('handVolume', zone.id), litres * defaultRelativeSd.handVolume]]) });
}

function detailsOf(zone: AccountZone): Absence['details'] {
  return { zones: [zone.id], controllerId: zone.controllerId ?? '' };
}
