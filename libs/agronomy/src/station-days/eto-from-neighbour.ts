import { referenceEvapotranspiration } from '../evapotranspiration/reference-evapotranspiration.js';
import type { CarriedValue, NeighbourValues } from '../weather/filling/neighbour-values.js';
import type { WeatherDay } from '../weather/weather-day.js';
import type { WeatherStation } from '../weather/weather-station.js';
import type { DayEto } from './station-day.js';

/** Below this a relative deviation says nothing: half a millimetre is about the error of a day. An assumption. [mm] */
const LEAST_ETO = 0.5;

/**
 * Reference evapotranspiration of a day that a neighbour completes; how far each carried value may be off makes it less sure.
 *
 * sd = √(sd(method, assumed)² + Σ (ΔETo(value + sd(value))/ETo)²)
 *
 * @param measured - What may be used of the station's own day, nulls where nobody sent it. [any]
 * @param values - What the neighbour tells. [any]
 * @param station - The station that lacks the day. [any]
 * @returns The value with its relative standard deviation; or null where the neighbour does not tell both temperatures. [mm]
 * @throws {DomainError} As `referenceEvapotranspiration`.
 * @source Propagation of uncertainty to first order (common practice); the values as `neighbourValues`.
 */
export function etoFromNeighbour(measured: WeatherDay, values: NeighbourValues, station: WeatherStation): DayEto | null {
  const completed = completedDay(measured, values);
  const eto = referenceEvapotranspiration(completed, station);
  if (eto.etoMm === null) return null;
  const { etoMm, method, assumed } = eto;
  const moves = (Object.keys(values) as CarriedValue[]).map((value) => {
    const moved = referenceEvapotranspiration(movedBy(completed, value, values[value]!.sd), station);
    return ((moved.etoMm ?? etoMm) - etoMm) / Math.max(LEAST_ETO, etoMm);
  });
  return { etoMm, method, assumed, relativeSd: Math.hypot(eto.relativeSd, ...moves), filling: { from: 'neighbour', values }, reason: null };
}

// Where the carried values contradict each other, the lowest is brought down to the highest.
function completedDay(measured: WeatherDay, values: NeighbourValues): WeatherDay {
  const amounts = Object.entries(values).map(([value, { amount }]) => [value, amount] as const);
  const day = { ...measured, ...Object.fromEntries(amounts) } as WeatherDay;
  const atMost = <Value extends number>(low: Value | null, high: Value | null): Value | null =>
    low !== null && high !== null && low > high ? high : low;
  return { ...day, tmin: atMost(day.tmin, day.tmax), rhmin: atMost(day.rhmin, day.rhmax), dewPoint: atMost(day.dewPoint, day.tmax) };
}

/** Which way a value is moved so that the day contradicts itself as little as before: away from what it must stay above or below. */
const TOWARDS: Readonly<Record<CarriedValue, 1 | -1>> = { tmax: 1, tmin: -1, dewPoint: -1, rhmax: -1, rhmin: -1, wind: 1, solar: -1 };

function movedBy(day: WeatherDay, value: CarriedValue, sd: number): WeatherDay {
  const floors: Partial<Record<CarriedValue, number>> = { rhmax: day.rhmin ?? 1, rhmin: 0, solar: 0 };
  const moved = Math.max(floors[value] ?? Number.NEGATIVE_INFINITY, (day[value] ?? 0) + TOWARDS[value] * sd);
  return { ...day, [value]: moved };
}
