import { DomainError } from '@rillbook/units/domain-error.js';
import { metresFromFeet, millimetresFromInches, millimetresFromMetres } from '@rillbook/units/length.js';
import { millimetresPerHourFromInchesPerHour } from '@rillbook/units/depth-rate.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Slope above which the ordinance limits the rate. [%] */
const STEEP = 25;

const MINUTES_PER_HOUR = 60;

/**
 * Highest precipitation rate that the ordinance allows on a slope.
 *
 * @param slope - Rise over run. [%]
 * @returns 0.75 in/h on slopes above 25 %; null where it sets no limit. [mm/h]
 * @throws {DomainError} `SLOPE_OUT_OF_DOMAIN` when negative or not finite.
 * @source 23 CCR 492.7(a)(1) (2015 text).
 */
export function ordinanceRateLimit(slope: number): Quantity<'mm/h'> | null {
  if (!(slope >= 0 && Number.isFinite(slope))) throw new DomainError('SLOPE_OUT_OF_DOMAIN', { slope });
  return slope > STEEP ? millimetresPerHourFromInchesPerHour(0.75) : null;
}

/**
 * Distances of the ordinance: how far overhead irrigation keeps from surfaces that take no water, and the width below which an area is watered
 * without overspray.
 *
 * @returns Setback and width. [mm]
 * @source 23 CCR 492.7(a)(1) (2015 text).
 */
export function ordinanceDistances(): { readonly overheadSetback: Quantity<'mm'>; readonly narrowBelow: Quantity<'mm'> } {
  return { overheadSetback: millimetresFromInches(24), narrowBelow: millimetresFromMetres(metresFromFeet(10)) };
}

/**
 * Window of the day in which the ordinance allows overhead irrigation: it passes midnight.
 *
 * @returns Begin and end as minutes after midnight. [min]
 * @source 23 CCR 492.10(a)(2).
 */
export function overheadWindow(): { readonly fromMinute: Quantity<'min'>; readonly untilMinute: Quantity<'min'> } {
  return { fromMinute: (20 * MINUTES_PER_HOUR) as Quantity<'min'>, untilMinute: (10 * MINUTES_PER_HOUR) as Quantity<'min'> };
}
