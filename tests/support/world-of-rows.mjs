// A world of a wished number of rows of weather, readings and usage: the same on every run. Also for proofs, which are plain JavaScript.

const DAY_MS = 86_400_000;
const FIRST_DAY = Date.UTC(2025, 3, 1);
const day = (at) => new Date(FIRST_DAY + at * DAY_MS).toISOString().slice(0, 10);
const two = (value) => String(value).padStart(2, '0');
const table = (head, rows) => `${[head, ...rows].join('\n')}\n`;

/** A number between 0 and 1 that follows from its place: no clock and no random source. */
const wave = (at) => (Math.sin(at * 12.9898) * 43_758.5453) % 1;

/** @param {{ rows: number, meters?: number }} wish how many rows of weather, readings and usage, in shares of 2, 1 and 7 tenths */
export function world({ rows, meters = 10 }) {
  const share = { weather: Math.round(rows * 0.2), readings: Math.round(rows * 0.1) };
  const usage = rows - share.weather - share.readings;
  const properties = Array.from({ length: meters }, (_, at) => `Property ${at + 1}`);
  const stations = Array.from({ length: Math.max(1, Math.ceil(share.weather / 500)) }, (_, at) => `Station ${at + 1}`);
  return {
    'stations.csv': table(
      'station,latitude,longitude,elevation_ft',
      stations.map((name, at) => `${name},38.${at},-121.0${at},241`),
    ),
    'properties.csv': table(
      'property,client,time_zone,weather_station',
      properties.map((name, at) => `${name},One client,America/Los_Angeles,${stations[at % stations.length]}`),
    ),
    'meters.csv': table(
      'meter,property,unit,digits,resolution',
      properties.map((name) => `M,${name},gal,8,1`),
    ),
    'weather.csv': table(
      'station,date,tmax_f,tmin_f,rhmax,rhmin,wind_mph,wind_height_ft,solar_mj_m2,rain_in',
      Array.from({ length: share.weather }, (_, at) => weatherRow(stations, at)),
    ),
    'readings.csv': table(
      'property,meter,read_at,register,source',
      Array.from({ length: share.readings }, (_, at) => readingRow(properties, at)),
    ),
    'usage.csv': table(
      'property,meter,start,end,volume,unit',
      Array.from({ length: usage }, (_, at) => usageRow(properties, at)),
    ),
  };
}

function weatherRow(stations, at) {
  const nth = Math.floor(at / stations.length);
  const warm = 70 + 20 * Math.sin(nth / 58) + 5 * wave(at);
  return [
    stations[at % stations.length],
    day(nth),
    warm.toFixed(1),
    (warm - 28).toFixed(1),
    86,
    30,
    (4 + 2 * Math.abs(wave(at + 1))).toFixed(1),
    10,
    (20 + 8 * Math.sin(nth / 58)).toFixed(2),
    (nth % 9 === 0 ? 0.12 : 0).toFixed(2),
  ].join(',');
}

function readingRow(properties, at) {
  const nth = Math.floor(at / properties.length);
  return [properties[at % properties.length], 'M', `${day(nth)}T10:${two(at % 60)}`, 10_000 + nth * 900, 'crew'].join(',');
}

/** Hours of one meter after the other, in days without a change of clocks in their middle. */
function usageRow(properties, at) {
  const perMeter = 24 * 200;
  const meter = Math.floor(at / perMeter) % properties.length;
  const hour = at % perMeter;
  const [from, until] = [hour, hour + 1].map((h) => `${day(Math.floor(h / 24))}T${two(h % 24)}:00`);
  return [properties[meter], 'M', from, until, (30 * Math.abs(wave(at))).toFixed(2), 'gal'].join(',');
}
