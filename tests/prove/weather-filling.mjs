// The checks and the filling of weather on a real year (Fallon, Nevada, 2015, USBR AgriMet): no measured value of it is refused, and each
// day left out in turn and filled from the station's normals lies within the stated standard deviation as often as it should: about 68 % of
// days within one and 95 % within two, if errors were normal.
import { stationDays } from '../../libs/agronomy/dist/station-days/station-days.js';
import { dayOfYear } from '../../libs/agronomy/dist/weather/day-of-year.js';
import { judgeWeatherDays } from '../../libs/agronomy/dist/weather/quality/judge-weather-days.js';
import { megajoulesPerSquareMetreDayFromLangleys } from '../../libs/units/dist/radiation.js';
import { metresPerSecondFromMilesPerHour } from '../../libs/units/dist/speed.js';
import { celsiusFromFahrenheit } from '../../libs/units/dist/temperature.js';
import { fallon, measuredDays } from '../support/fallon-2015.mjs';

export const readsShared = true;

const WITHIN_ONE = [0.6, 0.76];
const LEAST_WITHIN_TWO = 0.92;

const converted = (value, convert) => (value === null ? null : convert(value));

const record = measuredDays().map(({ date, tmax, tmin, dewPoint, wind, solar }) => ({
  date,
  measured: {
    dayOfYear: dayOfYear(date),
    tmax: converted(tmax, celsiusFromFahrenheit),
    tmin: converted(tmin, celsiusFromFahrenheit),
    rhmax: null,
    rhmin: null,
    dewPoint: converted(dewPoint, celsiusFromFahrenheit),
    wind: converted(wind, metresPerSecondFromMilesPerHour),
    windHeight: fallon.windHeight,
    solar: converted(solar, megajoulesPerSquareMetreDayFromLangleys),
    rain: null,
    givenEto: null,
  },
}));

function marksOfTheYear() {
  const marks = judgeWeatherDays(record, fallon).flatMap((day) => day.marks);
  const refused = marks.filter(({ effect }) => effect === 'refused');
  if (refused.length > 0) throw new Error(`${refused.length} measured values are refused: ${JSON.stringify(refused[0])}`);
  const counts = new Map();
  for (const { reason, effect } of marks) counts.set(`${reason} (${effect})`, (counts.get(`${reason} (${effect})`) ?? 0) + 1);
  return [...counts].map(([words, count]) => `${count} days ${words}`);
}

/** How far the filled value lies from the measured one, in stated standard deviations; null where it could not be filled. */
function deviation(at, measured) {
  const own = judgeWeatherDays(
    record.filter((_, place) => place !== at),
    fallon,
  );
  const { eto } = stationDays(own, fallon, null)[at];
  const real = measured[at].eto.etoMm;
  if (eto.etoMm === null || real === null) return null;
  if (eto.filling.from !== 'normals') throw new Error(`${record[at].date} is not filled from normals`);
  return Math.abs(eto.etoMm - real) / (eto.etoMm * eto.relativeSd);
}

export async function prove() {
  const marks = marksOfTheYear();
  const measured = stationDays(judgeWeatherDays(record, fallon), fallon, null);
  // Neither the first nor the last day: the series would only be shorter.
  const deviations = record.slice(1, -1).flatMap((_, place) => deviation(place + 1, measured) ?? []);
  if (deviations.length < 300) throw new Error(`only ${deviations.length} days could be filled`);
  const [one, two] = [1, 2].map((sds) => deviations.filter((each) => each <= sds).length / deviations.length);
  const line = `${deviations.length} days left out in turn: ${(100 * one).toFixed(1)} % within one standard deviation, ${(100 * two).toFixed(1)} % within two`;
  if (one < WITHIN_ONE[0] || one > WITHIN_ONE[1] || two < LEAST_WITHIN_TWO) throw new Error(line);
  return [`${record.length} days, no value refused`, ...marks, line].join('\n');
}
