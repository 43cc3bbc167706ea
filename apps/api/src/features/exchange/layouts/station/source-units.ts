import { HIGHEST_HUMIDITY } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-humidity.js';
import { millimetresFromInches } from '@rillbook/units/length.js';
import { megajoulesPerSquareMetreDayFromLangleys } from '@rillbook/units/radiation.js';
import { metresPerSecondFromMilesPerHour } from '@rillbook/units/speed.js';
import { celsiusFromFahrenheit } from '@rillbook/units/temperature.js';

/** A unit in which a station's file writes a value: every one is a line through the unit in which the value is kept. */
export interface SourceUnit {
  /** For a sentence. */
  readonly symbol: string;
  /** As headings write it, in lower case. */
  readonly names: readonly string[];
  readonly toKept: (written: number) => number;
}

const unit = (symbol: string, names: readonly string[], toKept: (written: number) => number): SourceUnit => ({ symbol, names, toKept });
const times = (factor: number) => (written: number) => written * factor;
const same = times(1);

/** Kelvin at 0 °C: exact by definition. */
const KELVIN_AT_0_C = 273.15;
/** MJ in a W/m2 that lasts a day, and an hour. */
const MJ_PER_WATT_DAY = 86_400 / 1e6;
const MJ_PER_WATT_HOUR = 3600 / 1e6;

/** The units of station files. Those of temperature are kept in °C, of depth in mm, of wind in m/s, of pressure in kPa, of radiation in MJ/m2. */
export const sourceUnits = {
  fahrenheit: unit('°F', ['degrees f', 'deg f', 'f', '°f'], (written) => ((written - 32) * 5) / 9),
  celsius: unit('°C', ['degrees c', 'deg c', 'c', '°c'], same),
  kelvin: unit('K', ['k', 'kelvin'], (written) => written - KELVIN_AT_0_C),
  tenthsOfCelsius: unit('0.1 °C', [], times(0.1)),
  inches: unit('in', ['inches', 'inch', 'in'], millimetresFromInches),
  millimetres: unit('mm', ['mm', 'mm/day', 'kg/m^2', 'millimeters'], same),
  tenthsOfMillimetres: unit('0.1 mm', [], times(0.1)),
  milesPerHour: unit('mph', ['mph'], metresPerSecondFromMilesPerHour),
  metresPerSecond: unit('m/s', ['m/s'], same),
  tenthsOfMetresPerSecond: unit('0.1 m/s', [], times(0.1)),
  langleys: unit('ly', ['ly', 'langley', 'langleys'], megajoulesPerSquareMetreDayFromLangleys),
  wattsForADay: unit('W/m2', ['w/m2', 'w/m^2', 'w m-2', 'w/sq.m'], times(MJ_PER_WATT_DAY)),
  wattsForAnHour: unit('W/m2', ['w/m2', 'w/m^2', 'w m-2', 'w/sq.m'], times(MJ_PER_WATT_HOUR)),
  watts: unit('W/m2', ['w/m^2', 'w/m2', 'w m-2'], same),
  seconds: unit('s', ['s'], same),
  percent: unit('%', ['%', 'percent'], same),
  kilopascals: unit('kPa', ['kpa'], same),
  pascals: unit('Pa', ['pa'], times(0.001)),
  perKilogram: unit('kg/kg', ['kg/kg', 'kg kg-1'], same),
  count: unit('', [], same),
} as const;

/** Plausible values, in the unit in which a value is kept. */
export interface Bounds {
  readonly min: number;
  readonly max: number;
}

/** The bounds of weather.csv, and of what its values are computed from. Common practice. */
export const bounds = {
  temperature: { min: celsiusFromFahrenheit(-80), max: celsiusFromFahrenheit(150) },
  humidity: { min: 0, max: HIGHEST_HUMIDITY },
  wind: { min: 0, max: metresPerSecondFromMilesPerHour(250) },
  rain: { min: 0, max: millimetresFromInches(80) },
  evapotranspiration: { min: 0, max: millimetresFromInches(2) },
  /** [MJ/m2] of a day */
  solar: { min: 0, max: 50 },
  /** [MJ/m2] of an hour; a sensor in the dark may read a little below zero */
  hourlySolar: { min: -0.05, max: 6 },
  /** [W/m2] over the daylight */
  daylightSolar: { min: 0, max: 1500 },
  daylight: { min: 0, max: 86_400 },
  /** [kPa] between the dew points -62 and 60 °C */
  vapourPressure: { min: 0.0014, max: 20 },
  specificHumidity: { min: 2e-5, max: 0.1 },
  year: { min: 1900, max: 2100 },
  /** Daymet's year always has 365 days: 31 December is dropped in leap years. */
  dayOf365: { min: 1, max: 365 },
} as const satisfies Record<string, Bounds>;
