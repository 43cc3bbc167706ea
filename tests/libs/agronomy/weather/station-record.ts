import { dayOfYear } from '@rillbook/agronomy/weather/day-of-year.js';
import { dateOfDay, dayNumber } from '@rillbook/agronomy/weather/day-number.js';
import type { RecordedDay } from '@rillbook/agronomy/weather/recorded-day.js';
import type { WeatherDay } from '@rillbook/agronomy/weather/weather-day.js';
import type { WeatherStation } from '@rillbook/agronomy/weather/weather-station.js';
import { degrees } from '@rillbook/units/angle.js';
import { metres } from '@rillbook/units/length.js';

/** An invented station on a plain. */
export const station: WeatherStation = { latitude: degrees(38), elevation: metres(100) };

type Values = Partial<Record<Exclude<keyof WeatherDay, 'dayOfYear'>, number | null>>;

const NOTHING: Values = {
  tmax: null,
  tmin: null,
  rhmax: null,
  rhmin: null,
  dewPoint: null,
  wind: null,
  windHeight: null,
  solar: null,
  rain: null,
  givenEto: null,
};

export const recorded = (date: string, values: Values): RecordedDay => ({
  date,
  measured: { dayOfYear: dayOfYear(date), ...NOTHING, ...values } as unknown as WeatherDay,
});

/** Swings between -1 and 1 without repeating itself, the same on every run. */
export const swing = (at: number): number => Math.sin(at * 12.9898) * Math.cos(at * 4.1414);

/** Days of an ordinary summer that pass every check; `change` alters one by its place. */
export const summer = (from: string, count: number, change: (at: number) => Values = () => ({})): RecordedDay[] =>
  Array.from({ length: count }, (_, at) =>
    recorded(dateOfDay(dayNumber(from) + at), {
      tmax: 32 + 3 * swing(at),
      tmin: 15 + 2 * swing(at + 0.5),
      rhmax: 88 + 4 * swing(at + 1),
      rhmin: 34 + 5 * swing(at + 2),
      dewPoint: 13.2 + 1.2 * swing(at + 3),
      wind: 2.1 + 0.6 * swing(at + 4),
      windHeight: 2,
      solar: 26 + 2 * swing(at + 5),
      rain: 0,
      ...change(at),
    }),
  );
