import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { type WettingMethod, wettedFractionByMethod } from '../surface/wetted-fraction-by-method.js';

/** Irrigation that really happened on a day. */
export type IrrigationEvent = {
  /** The day, YYYY-MM-DD. */
  readonly date: string;
  /** Water that entered the soil, over the zone's whole area. [mm] */
  readonly irrigation: Quantity<'mm'>;
  /** Share of the ground that it wetted, fw. [–] */
  readonly wettedFraction: number;
};

/** All irrigation of a day. */
export type DayIrrigation = {
  /** Water that entered the soil, I. [mm] */
  readonly irrigation: number;
  /** Greatest share of the ground that an event of the day wetted. [–] */
  readonly irrigatedFraction: number;
};

/**
 * Irrigation of a method, with the share of the ground that it commonly wets.
 *
 * @param date - The day, YYYY-MM-DD. [code]
 * @param irrigation - Water that entered the soil, over the zone's whole area. [mm]
 * @param method - How it reached the ground. [code]
 * @returns The event. [mm]
 * @throws {DomainError} `WETTING_METHOD_UNKNOWN` when the word is none of the methods.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Table 20.
 */
export function irrigationBy(date: string, irrigation: Quantity<'mm'>, method: WettingMethod): IrrigationEvent {
  return { date, irrigation, wettedFraction: wettedFractionByMethod(method) };
}

/**
 * Irrigation by day; several events of a day add up, and the widest tells how much of the ground got wet.
 *
 * @param events - Irrigation as it happened, in any order. [mm]
 * @param days - Dates of the season. [code]
 * @returns Irrigation by date, only of days that have some. [mm]
 * @throws {DomainError} `IRRIGATION_EVENT_OUT_OF_DOMAIN` when an event lies outside the season, or its depth or share cannot be.
 * @source Arithmetic; the share by FAO-56, Table 20.
 */
export function irrigationByDate(events: readonly IrrigationEvent[], days: ReadonlySet<string>): ReadonlyMap<string, DayIrrigation> {
  const byDate = new Map<string, DayIrrigation>();
  for (const event of events) {
    if (!(days.has(event.date) && isBelieved(event))) throw new DomainError('IRRIGATION_EVENT_OUT_OF_DOMAIN', { ...event });
    const before = byDate.get(event.date) ?? { irrigation: 0, irrigatedFraction: 0 };
    byDate.set(event.date, {
      irrigation: before.irrigation + event.irrigation,
      irrigatedFraction: Math.max(before.irrigatedFraction, event.wettedFraction),
    });
  }
  return byDate;
}

function isBelieved({ irrigation, wettedFraction }: IrrigationEvent): boolean {
  return irrigation >= 0 && Number.isFinite(irrigation) && wettedFraction > 0 && wettedFraction <= 1;
}
