import type { ControllerReplay } from '@rillbook/irrigation/settings/replay/replay-controller.js';
import type { SensorReplay } from '@rillbook/irrigation/settings/replay/replay-with-sensor.js';
import type { UnknownDay } from '@rillbook/irrigation/settings/replay/station-days.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import { defaultRelativeSd } from '../uncertainty/default-relative-sd.js';
import type { UncertainInput, UncertainInputs } from '../uncertainty/uncertain-input.js';
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
  if (zone.handWatered) return { figure: byHand(zone, month), ...NEITHER };
  if (!replay || zone.station === null) return { figure: absent(absence('no-controller', { zones: [zone.id] })), ...NEITHER };
  const water = waterOf(zone, zone.station, replay, needed);
  if (water.estimate && needed.figure.value === null) return { figure: absent(water.estimate), ...NEITHER };
  const filled = water.unknown.includes('settings-not-known')
    ? filledWater(water, minutesByDay(replay, zone.station), month)
    : NOTHING_FILLED;
  if (filled.litres === null)
    return { figure: absent(absence('settings-not-known', { ...detailsOf(zone), missingShare: filled.missingShare })), ...NEITHER };
  // Of a month that its timer set itself from end to end no run is known.
  const noDayKnown = !water.unknown.includes(null);
  const facts = noDayKnown ? NEITHER : { runs: water.runs, minutes: water.minutes, programs: water.programs };
  return {
    figure: figureOf(zone, water, { needed: needed.figure.value, filledLitres: filled.filledLitres, inputs: month.inputs }),
    ...facts,
  };
}

const NOTHING_FILLED = { litres: 0, filledLitres: 0 } as const;

function filledWater(water: ZoneWater, minutes: readonly number[], month: CoveredMonth): FilledVolume {
  return fillMissingDays(
    water.unknown.map((reason, day) => ({
      litres: (minutes[day] ?? 0) * (water.flow ?? 1) + estimateOfDay(water, day),
      knownShare: reason === 'settings-not-known' ? 0 : 1,
      etWeight: month.etWeights[day] ?? 1,
      neededLitres: water.neededByDay?.[day] ?? null,
    })),
  );
}

interface ZoneWater {
  readonly unknown: readonly (UnknownDay | null)[];
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
  const most = replay.most.stations.get(station) ?? NEVER_RAN;
  const least = replay.least.stations.get(station) ?? NEVER_RAN;
  return {
    unknown,
    minutes: (most.totalMinutes + least.totalMinutes) / 2,
    runs: (most.totalRuns + least.totalRuns) / 2,
    programs: most.programs,
    ...sensorSds(replay, station),
    flow: flowOf(zone),
    estimate: unknown.includes('settings-from-weather') ? absence('settings-from-weather', detailsOf(zone)) : null,
    neededByDay: unknown.some((reason) => reason !== null) ? needed.byDay : null,
  };
}

const NO_SENSOR = { sensorSd: 0, unknownRainSd: 0 } as const;

const NEVER_RAN = { totalMinutes: 0, totalRuns: 0, programs: [] } as const;

function sensorSds({ most, least, withoutSensor, unsure }: SensorReplay, station: number): Pick<ZoneWater, 'sensorSd' | 'unknownRainSd'> {
  if (most === least && most === withoutSensor && most === unsure) return NO_SENSOR;
  const totalAs = ({ stations }: ControllerReplay) => stations.get(station)?.totalMinutes ?? 0;
  const total = totalAs(most);
  const heldBack = totalAs(withoutSensor) - total;
  const perhapsHeldBack = total - totalAs(unsure);
  return {
    sensorSd: Math.hypot((total - totalAs(least)) / 2, heldBack * defaultRelativeSd.rainSensor),
    unknownRainSd: perhapsHeldBack * defaultRelativeSd.filled,
  };
}

function minutesByDay({ most, least }: SensorReplay, station: number): readonly number[] {
  const minutesOf = ({ stations, unknown }: ControllerReplay) => {
    const minutes = stations.get(station)?.minutes ?? [];
    return unknown.map((_, day) => minutes[day] ?? 0);
  };
  const own = minutesOf(most);
  if (least === most) return own;
  const fewer = minutesOf(least);
  return own.map((minutes, day) => (minutes + (fewer[day] ?? 0)) / 2);
}

function estimateOfDay({ unknown, neededByDay }: ZoneWater, day: number): number {
  return unknown[day] === 'settings-from-weather' ? (neededByDay?.[day] ?? 0) : 0;
}

interface FigureParts {
  readonly needed: UncertainLitres | null;
  readonly filledLitres: number;
  readonly inputs: UncertainInputs;
}

function figureOf(zone: AccountZone, water: ZoneWater, { needed, filledLitres, inputs }: FigureParts): Figure {
  // Where nothing ran by a program there is nothing that a flow would tell.
  if (water.flow === null && !(water.estimate && water.minutes === 0)) return absent(absence('flow-not-known', { zones: [zone.id] }));
  const flow = water.flow ?? 0;
  const estimated = water.estimate ? water.unknown.reduce((total, _, day) => total + estimateOfDay(water, day), 0) : 0;
  const whole = water.minutes * flow + estimated;
  const stretch = whole > 0 ? 1 + filledLitres / whole : 1;
  const others = ofController(
    [inputs.input('filledSettings', zone.controllerId), inputs.input('settingsFromWeather', zone.controllerId)],
    [filledLitres * defaultRelativeSd.filled, estimated * stretch * defaultRelativeSd.settingsFromWeather],
  );
  // An estimate leans on what the need leans on: against the need only the controller's own error is left.
  const asNeeded = estimated > 0 && needed ? ([[(estimated * stretch) / sum(water.neededByDay ?? []), needed]] as const) : [];
  const replayed = throughValve(zone, water, flow * stretch, inputs);
  return known(combined([[1, replayed], ...asNeeded, ...others]), estimated + filledLitres, water.estimate);
}

function ofController(inputs: readonly UncertainInput[], effects: readonly number[]): readonly (readonly [number, UncertainLitres])[] {
  return effects.every((effect) => effect === 0) ? [] : [[1, { litres: 0, inputs, effects }]];
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

function throughValve(zone: AccountZone, water: ZoneWater, flow: number, of: UncertainInputs): UncertainLitres {
  const { minutes, sensorSd, unknownRainSd } = water;
  const litres = minutes * flow;
  const { isDerived, relativeSd } = flowInputOf(zone);
  const inputs = [of.input(isDerived ? 'precipitationRate' : 'flow', zone.id)];
  const effects = [litres * relativeSd];
  if (isDerived) {
    inputs.push(of.input('area', zone.id));
    effects.push(litres * areaSd(zone));
  }
  if (sensorSd !== 0) {
    inputs.push(of.input('rainSensor', zone.controllerId));
    effects.push(sensorSd * flow);
  }
  // Where it did not rain on those days, more ran and more was needed: one input for both.
  if (unknownRainSd !== 0) {
    inputs.push(of.input('filledWeather', null));
    effects.push(unknownRainSd * flow);
  }
  return { litres, inputs, effects };
}

/**
 * How uncertain the flow of a zone is.
 *
 * A flow derived from precipitation rate and area errs with the area too, which need and allowance share.
 *
 * @param zone - The zone. [code]
 * @returns Whether it was derived, and the relative standard deviation of the flow, or of the precipitation rate where it was. [–]
 */
export function flowInputOf(zone: AccountZone): { readonly isDerived: boolean; readonly relativeSd: number } {
  const source = zone.assumed.includes('flowLPerMin') && zone.flowSource !== 'derived' ? 'assumed' : zone.flowSource;
  return { isDerived: source === 'derived', relativeSd: defaultRelativeSd.flow[source] };
}

function byHand(zone: AccountZone, { days, inputs }: CoveredMonth): Figure {
  const perWeek = zone.handLitresPerWeek;
  if (perWeek === null) return absent(absence('hand-volume-not-known', { zones: [zone.id] }));
  if (!(perWeek >= 0 && Number.isFinite(perWeek)))
    throw new DomainError('ZONE_FLOW_OUT_OF_DOMAIN', { zoneId: zone.id, handLitresPerWeek: perWeek });
  const litres = (perWeek * days) / 7;
  return known({ litres, inputs: [inputs.input('handVolume', zone.id)], effects: [litres * defaultRelativeSd.handVolume] });
}

function detailsOf(zone: AccountZone): Absence['details'] {
  return { zones: [zone.id], controllerId: zone.controllerId ?? '' };
}
