import { metres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { metresPerSecond } from '@rillbook/units/speed.js';

/** What had to be assumed for a day's reference evapotranspiration, because nobody measured it. */
export type AssumedInput = 'humidity' | 'wind' | 'wind-height' | 'solar-radiation' | 'elevation';

/** Wind where none was measured: mean of over 2,000 stations (FAO-56, chapter 3, missing wind data). */
export const ASSUMED_WIND: Quantity<'m/s'> = metresPerSecond(2);

/** Height of an anemometer where nobody stated it: the standard height of agricultural stations (FAO-56, chapter 3). */
export const ASSUMED_WIND_HEIGHT: Quantity<'m'> = metres(2);

/** Elevation where nobody stated it: sea level. An assumption. */
export const ASSUMED_ELEVATION: Quantity<'m'> = metres(0);
