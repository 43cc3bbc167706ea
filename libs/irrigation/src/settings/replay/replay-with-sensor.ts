import type { ControllerTraits } from '../controller-traits.js';
import { type ControllerReplay, type ReplayInput, replayController } from './replay-controller.js';

/** Rain by local day from `firstDay` on; not a number where it is not known. */
export interface RainByDay {
  readonly firstDay: number;
  readonly rainMm: ArrayLike<number>;
}

/**
 * A controller's replay as its rain sensor may have cut it.
 *
 * `most` and `least` differ where the sensor's threshold is not known; `withoutSensor` starts on every day, and `unsure` skips in addition the
 * days whose rain is not known. Without a sensor, or without rain, all four are one replay.
 */
export interface SensorReplay {
  readonly most: ControllerReplay;
  readonly least: ControllerReplay;
  readonly withoutSensor: ControllerReplay;
  readonly unsure: ControllerReplay;
}

/** A sensor stays wet on the day of the rain and the next: pauses of 24 to 48 hours are common practice, no source. */
const DRYING_DAYS = 2;

/** The most sensitive of the usual thresholds, an eighth of an inch: common practice, no source. */
const SMALLEST_THRESHOLD_MM = 3.175;

/**
 * Replays a controller with its rain sensor: no starts on a day when the rain of that day and the day before reach the threshold together.
 *
 * The day's rain is known and its hour is not, so the day of the rain counts as wet from its midnight on. Where a sensor is there and its
 * threshold is not known, every day with the rain of the most sensitive usual threshold may have had its starts or not.
 *
 * @param input - The controller's facts, pauses and traits and the days wanted. [code]
 * @param rain - Rain by day, from the day before the first wanted if it is known. [mm], one per day
 * @returns The replay with and without what the sensor may have held back. [min]
 * @throws {DomainError} As `replayController`.
 * @example With a threshold of 6 mm, rain of 4 mm on the 3rd and 3 mm on the 4th: no starts on the 4th, starts on the 5th.
 */
export function replayWithSensor(input: ReplayInput, rain: RainByDay): SensorReplay {
  const withoutSensor = replayController(input);
  if (!hasRainSensor(input.traits)) return asWithoutSensor(withoutSensor);
  const threshold = input.traits.rainSensorMm;
  const recent = recentRain(input, rain);
  const reached = reachedBy(recent, threshold ?? SMALLEST_THRESHOLD_MM);
  const dry = new Set<number>();
  const wet = threshold === null ? dry : reached;
  const unknownToo = new Set([...wet, ...recent.filter(({ known }) => !known).map(({ dayNumber }) => dayNumber)]);
  const replay = (days: ReadonlySet<number>) => (days.size === 0 ? withoutSensor : replayController({ ...input, daysWithoutStarts: days }));
  const most = replay(wet);
  const least = threshold === null ? replay(reached) : most;
  return { most, least, withoutSensor, unsure: unknownToo.size > wet.size ? replay(unknownToo) : most };
}

/**
 * The replay of a controller that has no rain sensor.
 *
 * @param replay - What its settings put out. [min]
 * @returns The same, whatever fell. [min]
 */
export function asWithoutSensor(replay: ControllerReplay): SensorReplay {
  return { most: replay, least: replay, withoutSensor: replay, unsure: replay };
}

/**
 * Days on which a rain sensor held every start back, as `most` of `replayWithSensor` has it: none where its threshold is not known.
 *
 * @param input - The controller's traits and the days wanted. [code]
 * @param rain - Rain by day, from the day before the first wanted if it is known. [mm], one per day
 * @returns Day numbers. [d]
 */
export function daysHeldBack(input: ReplayInput, rain: RainByDay): ReadonlySet<number> {
  const threshold = input.traits.rainSensorMm;
  return hasRainSensor(input.traits) && threshold !== null ? reachedBy(recentRain(input, rain), threshold) : new Set();
}

function reachedBy(recent: ReturnType<typeof recentRain>, threshold: number): ReadonlySet<number> {
  return new Set(recent.filter(({ mm }) => mm > 0 && mm >= threshold).map(({ dayNumber }) => dayNumber));
}

/**
 * Whether rain holds a controller's starts back.
 *
 * @param traits - What the controller is. [code]
 * @returns True where a sensor is on record, or its threshold. [code]
 */
export function hasRainSensor(traits: Pick<ControllerTraits, 'rainSensor' | 'rainSensorMm'>): boolean {
  return traits.rainSensor ?? traits.rainSensorMm !== null;
}

// From two days before the first, as runs that begin then may reach into it.
function recentRain({ firstDay, days }: ReplayInput, rain: RainByDay) {
  return Array.from({ length: days + DRYING_DAYS }, (_, index) => {
    const dayNumber = firstDay - DRYING_DAYS + index;
    const window = Array.from({ length: DRYING_DAYS }, (_each, back) => rain.rainMm[dayNumber - back - rain.firstDay] ?? Number.NaN);
    return {
      dayNumber,
      mm: window.filter((mm) => mm >= 0).reduce((sum, mm) => sum + mm, 0),
      known: window.every((mm) => mm >= 0),
    };
  });
}
