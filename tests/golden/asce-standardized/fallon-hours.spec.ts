import { hourlyReferenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/hourly/hourly-reference-evapotranspiration.js';
import { hourlyReferenceEvapotranspirationSeries } from '@rillbook/agronomy/evapotranspiration/hourly/hourly-reference-evapotranspiration-series.js';
import { dayOfYear } from '@rillbook/agronomy/weather/day-of-year.js';
import { degrees } from '@rillbook/units/angle.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../expect-within.js';
import { expectGolden, type GoldenCheck, type GoldenValue, given } from '../golden-check.js';
import { fallon, fallonHour } from './fallon.js';
import { checks } from './fallon-hours.values.js';
import { hours } from './fallon-hours-2015.values.js';

/** Printed to 0.01 mm; every bright hour of the year lies within this. [mm] */
const PRINTED = 0.015;

/** The clock of the checks is on UTC. */
const onUtc = { ...fallon, zoneLongitude: degrees(0) };

/** The checks have single hours; the one by night has the factor of a clear sky, as their note says. */
const CLEAR_SKY = 1;

const series = (from: string, until: string) => {
  const rows = hours.filter(([date]) => date >= from && date <= until);
  const weather = rows.map(([date, label, temperature, dewPoint, wind, solar]) =>
    fallonHour(dayOfYear(date), label - 0.5, { temperature, dewPoint, wind, solar }),
  );
  const answers = hourlyReferenceEvapotranspirationSeries(weather, fallon);
  return rows.map(([date, label, , , , , eto, etr], at) => ({ date, label, eto, etr, answer: answers[at]! }));
};

const spans = [...series('2015-06-01', '2015-06-02'), ...series('2015-10-04', '2015-10-05')];
const sumOf = (day: string) => spans.filter(({ date }) => date === day).reduce((sum, { answer }) => sum + (answer.etoMm ?? Number.NaN), 0);

function computed(check: GoldenCheck): Readonly<Record<string, GoldenValue>> {
  if (!('T' in check.inputs)) return { ETo_sum: String(check.inputs['days']?.[0]).split(' | ').map(sumOf) };
  const value = (name: string) => given(check, name);
  const measured = { temperature: value('T'), dewPoint: value('Tdew'), wind: value('uz'), solar: value('Rs') };
  const hour = fallonHour(value('day_of_year'), value('utc_start_hour') + 0.5, measured);
  const answer = hourlyReferenceEvapotranspiration(hour, onUtc, CLEAR_SKY);
  return { ETo_short: answer.etoMm ?? Number.NaN, ETr_tall: answer.etrMm ?? Number.NaN };
}

describe('Fallon 2015 by the hour, as printed by the reference ET calculator of the University of Idaho', () => {
  it.each(Object.entries(checks))('%s', (_, check) => expectGolden(check, computed(check)));

  it.each(spans)('$date, hour ending $label', ({ eto, etr, answer }) => {
    expect(answer).toMatchObject({ assumed: [], refused: [] });
    expectWithin(answer.etoMm ?? Number.NaN, eto, PRINTED);
    expectWithin(answer.etrMm ?? Number.NaN, etr, PRINTED);
  });

  it('carries the cloudiness of the last high sun through the night', () => {
    const night = spans.filter(({ date, label }) => date === '2015-06-02' && label <= 4);
    const lastHigh = spans.findLast(({ date, answer }) => date === '2015-06-01' && answer.etoMm !== null && answer.sunHigh);
    expect(lastHigh?.label).toBe(18);
    expect(night).toHaveLength(5);
    const carried = lastHigh && 'cloudiness' in lastHigh.answer ? lastHigh.answer.cloudiness : Number.NaN;
    for (const { answer } of night) expect(answer).toMatchObject({ sunHigh: false, cloudiness: carried });
  });
});
