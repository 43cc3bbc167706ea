// The checks and the filling of weather on a real year (Fallon, Nevada, 2015, USBR AgriMet): no measured value of it is refused, and each
// day left out in turn and filled from the station's normals lies within the stated standard deviation as often as it should: about 68 % of
// days within one and 95 % within two, if errors were normal. The same with each day filled from a neighbour: there is one real record, so the
// neighbour is invented, the real days warmer and windier with a weather of its own on each; the part of the standard deviation that filling
// adds is held against what the filled days really miss by.
import { stationDays } from '../../libs/agronomy/dist/station-days/station-days.js';
import { dayOfYear } from '../../libs/agronomy/dist/weather/day-of-year.js';
import { judgeWeatherDays } from '../../libs/agronomy/dist/weather/quality/judge-weather-days.js';
import { megajoulesPerSquareMetreDayFromLangleys } from '../../libs/units/dist/radiation.js';
import { metresPerSecondFromMilesPerHour } from '../../libs/units/dist/speed.js';
import { celsiusFromFahrenheit } from '../../libs/units/dist/temperature.js';
import { fallon, measuredDays } from '../support/fallon-2015.mjs';
import { standardNormals } from '../support/worlds/drawn-account.mjs';

export const readsShared = true;

const WITHIN_ONE = [0.6, 0.76];
const LEAST_WITHIN_TWO = 0.92;
/** From a neighbour: inputs are moved each by itself and to the side that changes more, and floors are a sensor's error: rather too wide. */
const WITHIN_ONE_OF_NEIGHBOUR = [0.6, 0.9];
const SEED = 2015;

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

/** The neighbour: two degrees warmer by day and one by night, a fifth more wind, each with a part of its own; the sun through other clouds. */
function inventedNeighbour() {
  const normal = standardNormals(SEED);
  const moved = (value, move) => (value === null ? null : move(value));
  return record.map(({ date, measured }) => {
    const [day, night, damp, wind, cloud] = [normal(), normal(), normal(), normal(), normal()];
    const values = {
      tmax: moved(measured.tmax, (value) => value + 2 + 1.2 * day),
      tmin: moved(measured.tmin, (value) => value + 1 + 1.5 * night),
      dewPoint: moved(measured.dewPoint, (value) => value - 0.5 + damp),
      wind: moved(measured.wind, (value) => 1.2 * value * Math.exp(0.2 * wind)),
      solar: moved(measured.solar, (value) => value * Math.min(1.03, 1 + 0.06 * cloud)),
    };
    return { date, measured: { ...measured, ...values, tmin: Math.min(values.tmin, values.tmax) } };
  });
}

/** How far a day filled from the neighbour lies from the measured one, in the deviation that filling adds to a measured day's own. */
function deviationOfNeighbour(at, measured, neighbour) {
  const own = judgeWeatherDays(
    record.filter((_, place) => place !== at),
    fallon,
  );
  const { eto } = stationDays(own, fallon, neighbour)[at];
  const real = measured[at].eto;
  if (eto.etoMm === null || real.etoMm === null || eto.filling.from !== 'neighbour') return null;
  const added = eto.etoMm * Math.sqrt(eto.relativeSd ** 2 - real.relativeSd ** 2);
  return Math.abs(eto.etoMm - real.etoMm) / added;
}

const sharesWithin = (deviations) => [1, 2].map((sds) => deviations.filter((each) => each <= sds).length / deviations.length);

function neighbourLine(measured) {
  const neighbour = { days: judgeWeatherDays(inventedNeighbour(), fallon), distanceKm: 20 };
  const deviations = record.slice(1, -1).flatMap((_, place) => deviationOfNeighbour(place + 1, measured, neighbour) ?? []);
  if (deviations.length < 300) throw new Error(`only ${deviations.length} days could be filled from the neighbour`);
  const [one, two] = sharesWithin(deviations);
  const line = `${deviations.length} days filled from an invented neighbour: ${(100 * one).toFixed(1)} % within one standard deviation, ${(100 * two).toFixed(1)} % within two`;
  if (one < WITHIN_ONE_OF_NEIGHBOUR[0] || one > WITHIN_ONE_OF_NEIGHBOUR[1] || two < LEAST_WITHIN_TWO) throw new Error(line);
  return line;
}

export async function prove() {
  const marks = marksOfTheYear();
  const measured = stationDays(judgeWeatherDays(record, fallon), fallon, null);
  // Neither the first nor the last day: the series would only be shorter.
  const deviations = record.slice(1, -1).flatMap((_, place) => deviation(place + 1, measured) ?? []);
  if (deviations.length < 300) throw new Error(`only ${deviations.length} days could be filled`);
  const [one, two] = sharesWithin(deviations);
  const line = `${deviations.length} days left out in turn: ${(100 * one).toFixed(1)} % within one standard deviation, ${(100 * two).toFixed(1)} % within two`;
  if (one < WITHIN_ONE[0] || one > WITHIN_ONE[1] || two < LEAST_WITHIN_TWO) throw new Error(line);
  return [`${record.length} days, no value refused`, ...marks, line, neighbourLine(measured)].join('\n');
}
