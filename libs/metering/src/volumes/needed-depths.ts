import { irrigationNeed } from '@rillbook/agronomy/water-balance/irrigation-need.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { WeatherSeries } from './weather-series.js';

/** A root zone's coefficient (plant, density and shade factor together) and readily available water. */
export interface NeedingZone {
  readonly plantCoefficient: number;
  readonly rawMm: number;
}

/** By how many of its standard deviations an input is moved, to see what it does. */
export interface WeatherShift {
  readonly etoSds: number;
  readonly rainFactor: number;
}

const AS_IT_CAME: WeatherShift = { etoSds: 0, rainFactor: 1 };

/**
 * Net irrigation that a zone needed, day by day, with the weather that really came.
 *
 * A day without weather needs an unknown depth and leaves the root zone as it found it.
 *
 * @param series - Weather from before the month to the last day covered. [mm], one per day
 * @param firstDay - Day number of the first day wanted. [d]
 * @param zone - Plant coefficient and readily available water. [–] and [mm]
 * @param shift - Moves reference evapotranspiration and rain, for uncertainty; none by default. [–]
 * @returns Net depth, or null where the day's weather is not known. [mm], one per day
 * @throws {DomainError} `ROOT_ZONE_OUT_OF_DOMAIN` when coefficient or storage is below zero.
 */
export function neededDepths(
  series: WeatherSeries,
  firstDay: number,
  zone: NeedingZone,
  shift: WeatherShift = AS_IT_CAME,
): readonly (number | null)[] {
  const known = series.etoMm.map((eto, day) => eto !== null && series.rainMm[day] !== null);
  const eto = series.etoMm.map((value, day) =>
    known[day] ? Math.max(0, (value ?? 0) * (1 + shift.etoSds * (series.etoRelativeSd[day] ?? 0))) : 0,
  );
  const rain = series.rainMm.map((value, day) => (known[day] ? (value ?? 0) * shift.rainFactor : 0));
  const from = firstDay - series.firstDay;
  const rootZone = { plantCoefficient: zone.plantCoefficient, readilyAvailableWater: zone.rawMm as Quantity<'mm'> };
  const need = irrigationNeed({ eto, rain }, rootZone, from);
  return Array.from(need.irrigationMm, (depth, day) => (known[from + day] ? depth : null));
}
