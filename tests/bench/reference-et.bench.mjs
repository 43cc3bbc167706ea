import { referenceEvapotranspiration } from '../../libs/agronomy/dist/evapotranspiration/reference-evapotranspiration.js';
import { atmosphericPressure } from '../../libs/agronomy/dist/evapotranspiration/air/atmospheric-pressure.js';
import { runReferenceEvapotranspiration } from '../../libs/agronomy/dist/evapotranspiration/series/reference-evapotranspiration-series.kernel.js';
import { sunOfLatitude } from '../../libs/agronomy/dist/evapotranspiration/series/sun-of-latitude.js';
import { NO_COMPILER, compileC, runC } from '../support/c-baseline.mjs';
import { count, medians, ratio } from '../support/measure.mjs';
import { program } from './baselines/reference-et-in-c.mjs';

export const tells =
  'reference ET of a station-day: day by day with method and what was assumed, and in one loop over columns, against the same equations in one plain function and in C';

const STATIONS = 20;
const DAYS = 365;
const SAME = 1e-9;
/** How far the loop and the program in C may stray from the chain of functions. [mm] */
const SAME_IN_COLUMNS = 1e-10;
const RUNS = { warmUps: 10, runs: 15 };
/** Rounds that the program in C measures, and of which it tells the median. */
const ROUNDS_IN_C = 200;

const station = (at) => ({ latitude: 30 + at, elevation: 100 * at });

/** A day that follows from its place: no clock and no random source. */
function day(at, nth) {
  const season = Math.sin((2 * Math.PI * (nth - 80)) / DAYS);
  const odd = Math.abs((Math.sin((at * DAYS + nth) * 12.9898) * 43_758.5453) % 1);
  const tmax = 20 + 12 * season + 4 * odd;
  return {
    dayOfYear: nth,
    tmax,
    tmin: tmax - 14,
    rhmax: null,
    rhmin: null,
    dewPoint: tmax - 18 + 3 * odd,
    wind: 1 + 3 * odd,
    windHeight: 3,
    solar: 16 + 9 * season + 2 * odd,
    rain: 0,
    givenEto: null,
  };
}

const vapour = (temperature) => 0.6108 * Math.exp((17.27 * temperature) / (temperature + 237.3));

/** ASCE-EWRI (2005), Eq. 1 to 33 with Appendix D, without a check, a name or a unit. */
function plain(d, { latitude, elevation }) {
  const phi = (latitude * Math.PI) / 180;
  const year = (2 * Math.PI * d.dayOfYear) / 365;
  const declination = 0.409 * Math.sin(year - 1.39);
  const sunset = Math.acos(-Math.tan(phi) * Math.tan(declination));
  const geometry = sunset * Math.sin(phi) * Math.sin(declination) + Math.cos(phi) * Math.cos(declination) * Math.sin(sunset);
  const ra = ((24 * 60) / Math.PI) * 0.082 * (1 + 0.033 * Math.cos(year)) * geometry;
  const pressure = 101.3 * ((293 - 0.0065 * elevation) / 293) ** 5.26;
  const ea = vapour(d.dewPoint);
  const sine = Math.max(0.1, Math.sin(0.85 + 0.3 * phi * Math.sin(year - 1.39) - 0.42 * phi * phi));
  const direct = 0.98 * Math.exp((-0.00146 * pressure) / sine - 0.075 * ((0.14 * ea * pressure + 2.1) / sine) ** 0.4);
  const clear = (direct + (direct >= 0.15 ? 0.35 - 0.36 * direct : 0.18 + 0.82 * direct)) * ra;
  const cloudiness = 1.35 * Math.min(1, Math.max(0.3, d.solar / clear)) - 0.35;
  const longwave = 4.901e-9 * (((d.tmax + 273.16) ** 4 + (d.tmin + 273.16) ** 4) / 2) * (0.34 - 0.14 * Math.sqrt(ea)) * cloudiness;
  const mean = (d.tmax + d.tmin) / 2;
  const slope = (2503 * Math.exp((17.27 * mean) / (mean + 237.3))) / (mean + 237.3) ** 2;
  const gamma = 0.000665 * pressure;
  const wind = (d.wind * 4.87) / Math.log(67.8 * d.windHeight - 5.42);
  const dry = (vapour(d.tmax) + vapour(d.tmin)) / 2 - ea;
  return Math.max(
    0,
    (0.408 * slope * (0.77 * d.solar - longwave) + ((gamma * 900) / (mean + 273)) * wind * dry) / (slope + gamma * (1 + 0.34 * wind)),
  );
}

/** The days of one station as columns. */
function columns(at) {
  const days = Array.from({ length: DAYS }, (_, nth) => day(at, nth + 1));
  const column = (name) => Float64Array.from(days, (each) => each[name] ?? Number.NaN);
  const names = ['tmax', 'tmin', 'rhmax', 'rhmin', 'dewPoint', 'wind', 'windHeight', 'solar', 'givenEto'];
  return { dayOfYear: Uint16Array.from(days, (each) => each.dayOfYear), ...Object.fromEntries(names.map((name) => [name, column(name)])) };
}

/** The stations as columns, with their sun and pressure and room for the result. */
const stationsInColumns = () =>
  Array.from({ length: STATIONS }, (_, at) => {
    const { latitude, elevation } = station(at);
    return { days: columns(at), sun: sunOfLatitude(latitude), pressure: atmosphericPressure(elevation), eto: new Float64Array(DAYS) };
  });

function mustAgree(days, stations) {
  stations.forEach(({ days: each, sun, pressure, eto }) => runReferenceEvapotranspiration(each, sun, pressure, eto));
  days.forEach(([d, at], nth) => {
    const ours = referenceEvapotranspiration(d, at).etoMm;
    const other = { plainly: plain(d, at), 'in the loop': stations[Math.floor(nth / DAYS)].eto[nth % DAYS] };
    const where = `day ${d.dayOfYear} at ${at.latitude}°: ${ours} mm`;
    if (!(Math.abs(ours - other.plainly) <= SAME)) throw new Error(`${where}, plainly ${other.plainly} mm`);
    if (!(Math.abs(ours - other['in the loop']) <= SAME_IN_COLUMNS)) throw new Error(`${where}, in the loop ${other['in the loop']} mm`);
  });
}

/** The same days through the same equations in C: its time by the day and its sum; null where there is no compiler. */
function inC(days) {
  const path = compileC(
    program(days.map(([d, at]) => [d.dayOfYear, d.tmax, d.tmin, d.dewPoint, d.wind, d.windHeight, d.solar, at.latitude, at.elevation])),
  );
  return path === null ? null : runC(path, [ROUNDS_IN_C]);
}

export async function bench() {
  const days = Array.from({ length: STATIONS }, (_, at) =>
    Array.from({ length: DAYS }, (_, nth) => [day(at, nth + 1), station(at)]),
  ).flat();
  const stations = stationsInColumns();
  mustAgree(days, stations);
  let sum = 0;
  const took = await medians(
    {
      ours: () => {
        for (const [d, at] of days) sum += referenceEvapotranspiration(d, at).etoMm;
      },
      plain: () => {
        for (const [d, at] of days) sum += plain(d, at);
      },
      loop: () => {
        for (const { days: each, sun, pressure, eto } of stations) sum += runReferenceEvapotranspiration(each, sun, pressure, eto);
      },
      tables: () => {
        for (let at = 0; at < STATIONS; at++) sum += sunOfLatitude(station(at).latitude).inverseSine[1];
      },
    },
    RUNS,
  );
  if (!Number.isFinite(sum)) throw new Error('the sum is not a number');
  const perSecond = (ms) => count((days.length / ms) * 1000);
  return [
    `day by day ${perSecond(took.ours)} station-days/s, the plain function ${perSecond(took.plain)}, the loop ${perSecond(took.loop)}, and ${(took.tables / STATIONS).toFixed(2)} ms a latitude for its tables`,
    `ratio: day by day takes ${ratio(took.ours / took.plain)} the plain function's time, the loop ${ratio(took.loop / took.plain)}, for the same ${count(days.length)} values`,
    comparedWithC(inC(days), stations, (took.loop * NANOSECONDS_PER_MILLISECOND) / days.length),
  ];
}

const NANOSECONDS_PER_MILLISECOND = 1e6;

function comparedWithC(told, stations, nanoseconds) {
  if (told === null) return NO_COMPILER;
  const ours = stations.reduce((sum, { eto }) => eto.reduce((total, value) => total + value, sum), 0);
  if (!(Math.abs(ours - told.sum) <= SAME_IN_COLUMNS * STATIONS * DAYS))
    throw new Error(`the loop adds up to ${ours} mm, C to ${told.sum} mm`);
  return `ratio: the loop takes ${ratio(nanoseconds / told.nanosecondsPerDay)} the time of the same model in C (-O3, sun by latitude tabulated too: ${count(1e9 / told.nanosecondsPerDay)} station-days/s)`;
}
