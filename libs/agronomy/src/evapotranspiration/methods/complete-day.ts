import type { Quantity } from '@rillbook/units/quantity.js';

/** A day of which all is known or has been assumed: what the Penman-Monteith methods start from. */
export type CompleteDay = {
  /** Day of the year, J. [–] */
  readonly dayOfYear: number;
  /** Highest air temperature, Tmax. [°C] */
  readonly maximumTemperature: Quantity<'°C'>;
  /** Lowest air temperature, Tmin. [°C] */
  readonly minimumTemperature: Quantity<'°C'>;
  /** Actual vapour pressure, ea. [kPa] */
  readonly vapourPressure: Quantity<'kPa'>;
  /** Wind speed at 2 m, u2. [m/s] */
  readonly windSpeedAt2M: Quantity<'m/s'>;
  /** Solar radiation, Rs. [MJ/m2/d] */
  readonly solarRadiation: Quantity<'MJ/m2/d'>;
};

/** Where the day was measured, all of it known. */
export type Site = {
  /** Latitude, φ, north positive. [°] */
  readonly latitude: Quantity<'°'>;
  /** Height above sea level, z. [m] */
  readonly elevation: Quantity<'m'>;
};
