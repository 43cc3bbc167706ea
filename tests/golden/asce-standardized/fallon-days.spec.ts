import { alfalfaReferenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/alfalfa-reference-evapotranspiration.js';
import { referenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/reference-evapotranspiration.js';
import { dayOfYear } from '@rillbook/agronomy/weather/day-of-year.js';
import type { WeatherDay } from '@rillbook/agronomy/weather/weather-day.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../expect-within.js';
import { expectGolden, given } from '../golden-check.js';
import { fallon, fallonDay } from './fallon.js';
import { days, months } from './fallon-2015.values.js';
import { checks } from './fallon-days.values.js';

/** What is printed to 0.01 mm, and computed by the program with some digits fewer. [mm] */
const PRINTED = 0.02;

function both(day: WeatherDay) {
  const [short, tall] = [referenceEvapotranspiration(day, fallon), alfalfaReferenceEvapotranspiration(day, fallon)];
  expect(short).toMatchObject({ method: 'penman-monteith', assumed: [], refused: [] });
  expect(tall).toMatchObject({ assumed: [], refused: [] });
  return { ETo_short: short.etoMm ?? Number.NaN, ETr_tall: tall.etrMm ?? Number.NaN };
}

describe('Fallon 2015 by the day, as printed by the reference ET calculator of the University of Idaho', () => {
  it.each(Object.entries(checks))('%s', (_, check) => {
    const value = (name: string) => given(check, name);
    const measured = { tmax: value('Tmax'), tmin: value('Tmin'), dewPoint: value('Tdew'), wind: value('uz'), solar: value('Rs') };
    expectGolden(check, both(fallonDay(value('day_of_year'), measured)));
  });

  it.each(days)('%s', (...row) => {
    const [date, tmin, tmax, solar, dewPoint, wind, eto, etr] = row;
    const computed = both(fallonDay(dayOfYear(date), { tmin, tmax, solar, dewPoint, wind }));
    expectWithin(computed.ETo_short, eto, PRINTED);
    expectWithin(computed.ETr_tall, etr, PRINTED);
  });

  it.each(months)('month %d: the days of its means come near the sum of its days', (...row) => {
    const [month, count, tmin, tmax, solar, dewPoint, wind, eto, etr] = row;
    const middle = dayOfYear(`2015-${String(month).padStart(2, '0')}-15`);
    const computed = both(fallonDay(middle, { tmin, tmax, solar, dewPoint, wind }));
    // FAO-56 computes months from their means (its Example 17); the curves of vapour pressure bend, so that a few per cent are lost: 7 in windy December.
    expectWithin(count * computed.ETo_short, eto, 0.08 * eto);
    expectWithin(count * computed.ETr_tall, etr, 0.08 * etr);
  });
});
