import {
  type ReferenceEvapotranspiration,
  referenceEvapotranspiration,
} from '@rillbook/agronomy/evapotranspiration/reference-evapotranspiration.js';
import { dayOfYear } from '@rillbook/agronomy/weather/day-of-year.js';
import type { WeatherDay } from '@rillbook/agronomy/weather/weather-day.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { WeatherStationRow } from '../stations/weather-station.entity.js';
import type { WeatherDayRow } from './weather-day.entity.js';

/** The columns carry the units of the library's quantities. */
const known = <Unit extends string>(value: number | null): Quantity<Unit> | null => value as Quantity<Unit> | null;

const measured = (row: WeatherDayRow): WeatherDay => ({
  dayOfYear: dayOfYear(row.day),
  tmax: known(row.tmaxC),
  tmin: known(row.tminC),
  rhmax: row.rhMaxPercent,
  rhmin: row.rhMinPercent,
  dewPoint: known(row.dewPointC),
  wind: known(row.windMPerS),
  windHeight: known(row.windHeightM),
  solar: known(row.solarMjPerM2),
  rain: known(row.rainMm),
  givenEto: known(row.givenEtoMm),
});

/** Reference evapotranspiration of a kept day, by the best method that its values allow; or null with the reason. */
export const etoOfDay = (row: WeatherDayRow, station: Pick<WeatherStationRow, 'latitude' | 'elevationM'>): ReferenceEvapotranspiration =>
  referenceEvapotranspiration(measured(row), { latitude: station.latitude as Quantity<'°'>, elevation: known(station.elevationM) });
