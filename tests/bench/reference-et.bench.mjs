import { referenceEvapotranspiration } from '../../libs/agronomy/dist/evapotranspiration/reference-evapotranspiration.js';
import { count, medians, ratio } from '../support/measure.mjs';

export const tells = 'reference ET of a station-day with its method and what was assumed, against the same equations in one plain function';

const STATIONS = 20;
const DAYS = 365;
const SAME = 1e-9;

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

export async function bench() {
  const days = Array.from({ length: STATIONS }, (_, at) =>
    Array.from({ length: DAYS }, (_, nth) => [day(at, nth + 1), station(at)]),
  ).flat();
  for (const [d, at] of days) {
    const [ours, theirs] = [referenceEvapotranspiration(d, at).etoMm, plain(d, at)];
    if (!(Math.abs(ours - theirs) <= SAME)) throw new Error(`day ${d.dayOfYear} at ${at.latitude}°: ${ours} mm, plainly ${theirs} mm`);
  }
  let sum = 0;
  const took = await medians(
    {
      ours: () => {
        for (const [d, at] of days) sum += referenceEvapotranspiration(d, at).etoMm;
      },
      plain: () => {
        for (const [d, at] of days) sum += plain(d, at);
      },
    },
    { warmUps: 10, runs: 15 },
  );
  if (!Number.isFinite(sum)) throw new Error('the sum is not a number');
  const perSecond = (ms) => count((days.length / ms) * 1000);
  return [
    `the library ${perSecond(took.ours)} station-days/s, the plain function ${perSecond(took.plain)}`,
    `ratio: the library takes ${ratio(took.ours / took.plain)} the plain function's time, for the same ${count(days.length)} values`,
  ];
}
