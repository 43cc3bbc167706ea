import type { Quantity } from '@rillbook/units/quantity.js';
import { megajoulesPerSquareMetreHour } from '@rillbook/units/radiation.js';

/** The two reference surfaces: clipped grass of 0.12 m, and alfalfa of 0.5 m. */
export type ReferenceSurface = 'short' | 'tall';

/** Share of net radiation that goes into the soil, by surface, by day and by night (ASCE-EWRI 2005, Eq. 65 and 66). */
const SHARE: Readonly<Record<ReferenceSurface, { readonly day: number; readonly night: number }>> = {
  short: { day: 0.1, night: 0.5 },
  tall: { day: 0.04, night: 0.2 },
};

/**
 * Soil heat flux of an hour, G (ASCE-EWRI, Eq. 65 and 66).
 *
 * G = 0.1·Rn by day and 0.5·Rn by night under short grass; 0.04·Rn and 0.2·Rn under tall alfalfa. It is day where Rn ≥ 0.
 *
 * @param netRadiation - Net radiation of the hour. [MJ/m2/h]
 * @param surface - The reference surface. [code]
 * @returns Heat that goes into the soil; negative when it comes out. [MJ/m2/h]
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Eq. 65 and 66; equation numbers from memory.
 * @example 0.1744 under grass for Rn 1.744, FAO-56 Example 19
 */
export function hourlySoilHeatFlux(netRadiation: Quantity<'MJ/m2/h'>, surface: ReferenceSurface): Quantity<'MJ/m2/h'> {
  const { day, night } = SHARE[surface];
  return megajoulesPerSquareMetreHour((netRadiation >= 0 ? day : night) * netRadiation);
}
