import type { Quantity } from '@rillbook/units/quantity.js';

/** Where a source of daily weather stands; an elevation that nobody stated is null. */
export type WeatherStation = {
  /** Latitude, north positive. [°] */
  readonly latitude: Quantity<'°'>;
  /** Height above sea level. [m] */
  readonly elevation: Quantity<'m'> | null;
};
