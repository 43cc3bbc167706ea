import type { WeatherDay } from './weather-day.js';

/** One day of a station's record: its calendar date, YYYY-MM-DD, and what was measured on it. */
export type RecordedDay = { readonly date: string; readonly measured: WeatherDay };
