import type { Quantity } from '@rillbook/units/quantity.js';
import { doubtedRainSd, neighbourRain, type RainNeighbour } from '../weather/filling/neighbour-rain.js';
import { isSound, type JudgedDay } from '../weather/quality/judge-weather-days.js';
import type { StationDay } from './station-day.js';

/** Rain of these days before and after says what an unknown day may have had. [d] */
const REACH = 45;

/** Days that must be known for it. An assumption. */
const LEAST_DAYS = 20;

/** What a day may have had where nothing is known around it: about the root mean square over dry and wet days of a moist climate. An assumption. [mm] */
const UNKNOWN_MM = 5;

/** The rain of a day, where it is from, and how far it may be off. */
export type RainOfDay = Pick<StationDay, 'rainMm' | 'rainFrom' | 'rainSdMm'>;

/**
 * Rain of a day: the station's, else the neighbour's, else not known, each with how far it may be off.
 *
 * @param dayNumber - Day number. [d]
 * @param own - The station's judged days, by day number. [any]
 * @param neighbour - The neighbour's days and distance, or null. [any]
 * @returns Rain, its source and standard deviation; of an unknown day the root mean square of what fell on the known days around it. [mm]
 * @source As `neighbourRain`; what an unknown day may have had is an assumption.
 */
export function rainOfDay(dayNumber: number, own: ReadonlyMap<number, JudgedDay>, neighbour: RainNeighbour | null): RainOfDay {
  const here = own.get(dayNumber);
  const rainMm = here?.usable.rain ?? null;
  if (here && rainMm !== null) return { rainMm, rainFrom: 'station', rainSdMm: isSound(here, 'rain') ? NO_DOUBT : doubtedRainSd(rainMm) };
  const told = neighbour && neighbourRain(dayNumber, own, neighbour);
  if (told) return { rainMm: told.rainMm, rainFrom: 'neighbour', rainSdMm: told.sdMm };
  return { rainMm: null, rainFrom: null, rainSdMm: unknownRainSd(dayNumber, own) };
}

const NO_DOUBT = 0 as Quantity<'mm'>;

function unknownRainSd(number: number, own: ReadonlyMap<number, JudgedDay>): Quantity<'mm'> {
  let [days, squares] = [0, 0];
  for (let day = number - REACH; day <= number + REACH; day++) {
    const rain = own.get(day)?.usable.rain ?? null;
    if (rain === null) continue;
    days += 1;
    squares += rain ** 2;
  }
  return (days < LEAST_DAYS ? UNKNOWN_MM : Math.sqrt(squares / days)) as Quantity<'mm'>;
}
