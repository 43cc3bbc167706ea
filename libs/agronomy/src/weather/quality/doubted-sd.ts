import type { WeatherValue } from '../plausible-weather-day.js';
import type { JudgedDay } from './judge-weather-days.js';

/** Inputs of reference evapotranspiration that several values stand for. */
type DoubtedInput = 'temperature' | 'humidity' | 'wind' | 'solar-radiation' | 'given';

const INPUT_OF: Readonly<Record<WeatherValue, DoubtedInput | null>> = {
  tmax: 'temperature',
  tmin: 'temperature',
  rhmax: 'humidity',
  rhmin: 'humidity',
  dewPoint: 'humidity',
  wind: 'wind',
  windHeight: 'wind',
  solar: 'solar-radiation',
  rain: null,
  givenEto: 'given',
};

/**
 * What each doubted input adds to the relative standard deviation of a day: as much as if it had not been measured but assumed; a doubted
 * temperature 5 %, which is some 2 °C. Assumptions.
 */
const BY_INPUT: Readonly<Record<DoubtedInput, number>> = {
  temperature: 0.05,
  humidity: 0.06,
  wind: 0.07,
  'solar-radiation': 0.1,
  given: 0.1,
};

/**
 * What doubted values add to the relative standard deviation of a day's reference evapotranspiration.
 *
 * sd = √(Σ sd(input)²), each input once. Doubted humidities count only where no dew point is used instead, and the value that a source states
 * itself only where it is used.
 *
 * @param day - The judged day. [any]
 * @param isGiven - Whether the source's own value is used; else the measured inputs are. [code]
 * @returns Standard deviation over value, to be added in quadrature; 0 without a doubted value. [–]
 * @source Assumption, stated as such.
 */
export function doubtedSd(day: JudgedDay, isGiven: boolean): number {
  const inputs = new Set<DoubtedInput>();
  for (const { value, effect } of day.marks) {
    const input = INPUT_OF[value];
    if (effect !== 'doubted' || input === null || (input === 'given') !== isGiven) continue;
    if (input === 'humidity' && value !== 'dewPoint' && day.usable.dewPoint !== null) continue;
    inputs.add(input);
  }
  return Math.hypot(...[...inputs].map((input) => BY_INPUT[input]));
}
