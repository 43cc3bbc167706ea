import { WARM_UP_DAYS } from '@rillbook/agronomy/water-balance/irrigation-need.js';
import { needByMonth } from '@rillbook/agronomy/water-balance/need-by-month.kernel.js';
import type { AccountZone } from '@rillbook/metering/account/account-input.js';
import { grossVolume } from '@rillbook/metering/volumes/gross-volume.js';
import type { WeatherSeries } from '@rillbook/metering/volumes/weather-series.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { DaySpan } from './property-calendar.js';

/**
 * What zones need by day, gross; not a number on days without weather. One balance runs over all days, from 90 days before them. Who asks of the
 * same zone again is given the same numbers. [L]
 */
export function neededByDay(weather: WeatherSeries, { firstDay, days }: DaySpan): (zone: AccountZone) => Float64Array {
  const length = days + WARM_UP_DAYS;
  const [eto, rain] = [new Float64Array(length), new Float64Array(length)];
  const known = new Uint8Array(length);
  for (let day = 0; day < length; day++) {
    const at = firstDay - WARM_UP_DAYS + day - weather.firstDay;
    const [reference, fallen] = [weather.etoMm[at] ?? Number.NaN, weather.rainMm[at] ?? Number.NaN];
    if (Number.isNaN(reference + fallen)) continue;
    eto[day] = reference;
    rain[day] = fallen;
    known[day] = 1;
  }
  const months = { starts: Int32Array.of(WARM_UP_DAYS), ends: Int32Array.of(length), warmUpDays: WARM_UP_DAYS };
  const depths = new Map<string, Float64Array>();
  const depthsOf = (coefficient: number, rawMm: number): Float64Array => {
    const key = `${coefficient} ${rawMm}`;
    const present = depths.get(key);
    if (present) return present;
    const ofMonths = new Float64Array(length);
    const written = { depletion: new Float64Array(length + 1), irrigation: new Float64Array(length), sums: new Float64Array(1), ofMonths };
    needByMonth({ eto, rain }, months, coefficient, rawMm, written);
    const ofDays = ofMonths.subarray(WARM_UP_DAYS);
    for (let day = 0; day < days; day++) if (!known[day + WARM_UP_DAYS]) ofDays[day] = Number.NaN;
    depths.set(key, ofDays);
    return ofDays;
  };
  const ofZones = new Map<AccountZone, Float64Array>();
  return (zone) => {
    const present = ofZones.get(zone);
    if (present) return present;
    const perMm = grossVolume(1 as Quantity<'mm'>, zone);
    const depth = depthsOf(zone.plantFactor * zone.density * zone.shade, zone.rawMm);
    const litres = new Float64Array(days);
    for (let day = 0; day < days; day++) litres[day] = depth[day]! * perMm;
    ofZones.set(zone, litres);
    return litres;
  };
}
