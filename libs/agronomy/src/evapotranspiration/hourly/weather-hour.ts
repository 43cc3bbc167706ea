import type { Quantity } from '@rillbook/units/quantity.js';
import type { WeatherStation } from '../../weather/weather-station.js';
import type { ClockedPlace } from '../sun/solar-hour-angle.js';

/** One hour of a weather station as it was measured: what was not measured is null, never zero. */
export type WeatherHour = {
  /** Day of the year at the station, 1 for 1 January. [–] */
  readonly dayOfYear: number;
  /** Time of the station's clock in the middle of the hour, standard time: 10.5 for 10 to 11. [h] */
  readonly middleHour: number;
  /** Mean air temperature. [°C] */
  readonly temperature: Quantity<'°C'> | null;
  /** Mean dew point. [°C] */
  readonly dewPoint: Quantity<'°C'> | null;
  /** Mean relative humidity. [%] */
  readonly humidity: number | null;
  /** Mean wind speed at `windHeight`. [m/s] */
  readonly wind: Quantity<'m/s'> | null;
  /** Height of the anemometer above the ground. [m] */
  readonly windHeight: Quantity<'m'> | null;
  /** Solar radiation. [MJ/m2/h] */
  readonly solar: Quantity<'MJ/m2/h'> | null;
};

/** A station whose hours can be placed under the sun: with longitude, and the longitude of the zone that its clock follows. */
export type ClockedStation = WeatherStation & ClockedPlace;
