import type { Quantity } from '@rillbook/units/quantity.js';

/** One day of a weather station as it was measured: what was not measured is null, never zero. */
export type WeatherDay = {
  /** Day of the year, 1 for 1 January. [–] */
  readonly dayOfYear: number;
  /** Highest air temperature. [°C] */
  readonly tmax: Quantity<'°C'> | null;
  /** Lowest air temperature. [°C] */
  readonly tmin: Quantity<'°C'> | null;
  /** Highest relative humidity. [%] */
  readonly rhmax: number | null;
  /** Lowest relative humidity. [%] */
  readonly rhmin: number | null;
  /** Mean dew point. [°C] */
  readonly dewPoint: Quantity<'°C'> | null;
  /** Mean wind speed at `windHeight`. [m/s] */
  readonly wind: Quantity<'m/s'> | null;
  /** Height of the anemometer above the ground. [m] */
  readonly windHeight: Quantity<'m'> | null;
  /** Solar radiation. [MJ/m2/d] */
  readonly solar: Quantity<'MJ/m2/d'> | null;
  /** Rain. [mm] */
  readonly rain: Quantity<'mm'> | null;
  /** Reference evapotranspiration as the source itself states it. [mm] */
  readonly givenEto: Quantity<'mm'> | null;
};
