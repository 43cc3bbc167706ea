import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Rain of a day from which the whole ground counts as wetted. [mm] FAO-56, chapter 7, has 3 to 4 mm; the lower end. */
export const WETTING_RAIN = 3;

/** What fell on a day and how much of the ground the irrigation wetted. */
export type Wetting = {
  /** Rain, P. [mm] */
  readonly rain: Quantity<'mm'>;
  /** Irrigation over the zone's whole area, I. [mm] */
  readonly irrigation: Quantity<'mm'>;
  /** Share of the ground that this irrigation wets, fw of the method. [–] */
  readonly irrigatedFraction: number;
};

/**
 * Share of the ground wetted last, fw (FAO-56, chapter 7, steps below Table 20).
 *
 * An irrigated day takes the irrigation's share; else rain of 3 mm or more wets all; else the share of the day before stays.
 *
 * @param previousFraction - Share after the day before. [–]
 * @param wetting - What fell, and the share that the irrigation wets. [mm]
 * @returns Share of the ground that was wetted last. [–]
 * @throws {DomainError} `SURFACE_LAYER_OUT_OF_DOMAIN` when a share is not within 0 … 1; `RAIN_OUT_OF_DOMAIN` when what fell is below 0 or not finite.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, chapter 7, Table 20 and the text below it.
 */
export function wettedFraction(previousFraction: number, wetting: Wetting): number {
  const { rain, irrigation, irrigatedFraction } = wetting;
  if (![previousFraction, irrigatedFraction].every((share) => share >= 0 && share <= 1)) {
    throw new DomainError('SURFACE_LAYER_OUT_OF_DOMAIN', { previousFraction, irrigatedFraction });
  }
  if (![rain, irrigation].every((depth) => depth >= 0 && depth < Infinity))
    throw new DomainError('RAIN_OUT_OF_DOMAIN', { rain, irrigation });
  if (irrigation > 0) return irrigatedFraction;
  return rain >= WETTING_RAIN ? 1 : previousFraction;
}
