import { TRACE_RAIN_SHARE } from './rain/effective-rain.js';

/** Consecutive days of weather; a day that is not known is 0 in both and so leaves the root zone as it found it. */
export type NeedSeries = {
  /** Reference evapotranspiration, ETo. [mm/d], one per day */
  readonly eto: Float64Array;
  /** Rain, P. [mm/d], one per day, same order */
  readonly rain: Float64Array;
};

/** Months as indices into the weather, oldest first, none within another. */
export type NeedMonths = {
  /** Index of each month's first day. [–], one per month */
  readonly starts: Int32Array;
  /** Index after each month's last day. [–], one per month */
  readonly ends: Int32Array;
  /** Days before a month's first at which its own balance begins; where the weather begins later, it begins with it. [d] */
  readonly warmUpDays: number;
};

/** What the kernel writes to; used again for each zone. */
export type NeedWritten = {
  /** Depletion at the beginning of each day: longer by one than the weather. [mm] */
  readonly depletion: Float64Array;
  /** Hypothetical irrigation of each day: as long as the weather. [mm] */
  readonly irrigation: Float64Array;
  /** Irrigation of each month. [mm], one per month */
  readonly sums: Float64Array;
  /** Irrigation of each month's days, at the day's own index; null where only sums are wanted. [mm] */
  readonly ofMonths: Float64Array | null;
};

/**
 * Irrigation that one root zone needed in each of some months, every month with a balance of its own that begins with D = RAW.
 *
 * D = max(0, D + KL·ETo - Pe); I = max(0, D - RAW); D = D - I. Two balances with the same depletion on a day are the same from then on, so a
 * month's balance runs only until it meets the one of the month before, and then goes on where that ended: the sums are those of each month
 * computed alone, to the last bit.
 *
 * @param weather - Consecutive days. [mm/d], one per day
 * @param months - The months. [–]
 * @param plantCoefficient - Evapotranspiration of the plants over reference evapotranspiration, KL. [–]
 * @param readilyAvailableWater - Readily available water, RAW. [mm]
 * @param written - Written to: the sums, and the days where they are wanted. [mm]
 * @returns Nothing: `written` holds the result. [–]
 * @source The definition of the need in docs/nomenclature.md; rain below 0.2 ETo ignored by FAO-56, chapter 8.
 */
export function needByMonth(
  weather: NeedSeries,
  months: NeedMonths,
  plantCoefficient: number,
  readilyAvailableWater: number,
  written: NeedWritten,
): void {
  const { eto, rain } = weather;
  const { depletion, irrigation, sums, ofMonths } = written;
  // The days of one unbroken balance that are held.
  let heldFrom = 0;
  let heldUntil = -1;
  for (let month = 0; month < months.starts.length; month += 1) {
    const first = months.starts[month] as number;
    const end = months.ends[month] as number;
    const begin = first > months.warmUpDays ? first - months.warmUpDays : 0;
    let day = begin;
    let now = readilyAvailableWater;
    if (begin >= heldFrom && begin <= heldUntil) {
      while (day < heldUntil && now !== depletion[day]) {
        const reference = eto[day] as number;
        const fallen = rain[day] as number;
        const counted = fallen <= TRACE_RAIN_SHARE * reference ? 0 : fallen;
        const wanting = now + plantCoefficient * reference;
        const left = counted > wanting ? 0 : wanting - counted;
        depletion[day] = now;
        const excess = left > readilyAvailableWater ? left - readilyAvailableWater : 0;
        irrigation[day] = excess;
        now = excess > 0 ? readilyAvailableWater : left;
        day += 1;
      }
      if (day < heldUntil) {
        day = heldUntil;
        now = depletion[heldUntil] as number;
      }
    }
    for (; day < end; day += 1) {
      const reference = eto[day] as number;
      const fallen = rain[day] as number;
      const counted = fallen <= TRACE_RAIN_SHARE * reference ? 0 : fallen;
      const wanting = now + plantCoefficient * reference;
      const left = counted > wanting ? 0 : wanting - counted;
      depletion[day] = now;
      const excess = left > readilyAvailableWater ? left - readilyAvailableWater : 0;
      irrigation[day] = excess;
      now = excess > 0 ? readilyAvailableWater : left;
    }
    depletion[day] = now;
    heldFrom = begin;
    heldUntil = day;
    let sum = 0;
    for (let at = first; at < end; at += 1) sum += irrigation[at] as number;
    sums[month] = sum;
    if (ofMonths) for (let at = first; at < end; at += 1) ofMonths[at] = irrigation[at] as number;
  }
}
