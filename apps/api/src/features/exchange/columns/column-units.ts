import { squareFeetFromSquareMetres, squareMetresFromSquareFeet } from '@rillbook/units/area.js';
import { inchesPerHourFromMillimetresPerHour, millimetresPerHourFromInchesPerHour } from '@rillbook/units/depth-rate.js';
import { gallonsPerMinuteFromLitresPerMinute, litresPerMinuteFromGallonsPerMinute } from '@rillbook/units/flow.js';
import { feetFromMetres, inchesFromMillimetres, metresFromFeet, millimetresFromInches } from '@rillbook/units/length.js';
import { kilopascalsFromPsi, psiFromKilopascals } from '@rillbook/units/pressure.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { metresPerSecondFromMilesPerHour, milesPerHourFromMetresPerSecond } from '@rillbook/units/speed.js';
import { celsiusFromFahrenheit, fahrenheitFromCelsius } from '@rillbook/units/temperature.js';
import { gallonsFromLitres, litresFromGallons } from '@rillbook/units/volume.js';

/** The unit in which a column is written, and the way to the unit in which it is kept. */
export interface ColumnUnit {
  readonly toKept: (written: number) => number;
  readonly toWritten: (kept: number) => number;
  /** Whether the two are the same, so that no digit is touched. */
  readonly plain: boolean;
}

function unit<Kept extends string>(toKept: (written: number) => number, toWritten: (kept: Quantity<Kept>) => number): ColumnUnit {
  return { toKept, toWritten: (kept) => toWritten(kept as Quantity<Kept>), plain: false };
}

/** A number that is kept as it is written: counts, ratios, money, registers in the meter's own unit. */
export const asWritten: ColumnUnit = { toKept: (written) => written, toWritten: (kept) => kept, plain: true };
/** ft, kept in m. */
export const feet = unit<'m'>(metresFromFeet, feetFromMetres);
/** in, kept in mm. */
export const inches = unit<'mm'>(millimetresFromInches, inchesFromMillimetres);
/** ft², kept in m². */
export const squareFeet = unit<'m2'>(squareMetresFromSquareFeet, squareFeetFromSquareMetres);
/** US gal (and per day, week or month), kept in L. */
export const gallons = unit<'L'>(litresFromGallons, gallonsFromLitres);
/** gpm, kept in L/min. */
export const gallonsPerMinute = unit<'L/min'>(litresPerMinuteFromGallonsPerMinute, gallonsPerMinuteFromLitresPerMinute);
/** in/h, kept in mm/h. */
export const inchesPerHour = unit<'mm/h'>(millimetresPerHourFromInchesPerHour, inchesPerHourFromMillimetresPerHour);
/** psi, kept in kPa. */
export const psi = unit<'kPa'>(kilopascalsFromPsi, psiFromKilopascals);
/** °F, kept in °C. */
export const fahrenheit = unit<'°C'>(celsiusFromFahrenheit, fahrenheitFromCelsius);
/** mph, kept in m/s. */
export const milesPerHour = unit<'m/s'>(metresPerSecondFromMilesPerHour, milesPerHourFromMetresPerSecond);
