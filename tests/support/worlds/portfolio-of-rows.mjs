// A large portfolio straight into the tables: so many properties with zones, a meter with readings, a controller with settings, and
// weather for a year and the 90 days before it. The same on every run. `admin` is a connection that owns the tables.
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { from as copyFrom } from 'pg-copy-streams';

const DAY_MS = 86_400_000;
const FIRST_WEATHER = Date.UTC(2024, 9, 3);
const WEATHER_DAYS = 455;
const READINGS = 27;
const PLANTS = ['turf cool-season', 'shrubs', 'groundcover', 'trees'];

/** The day on which the organization's clock stands: twelve months have an account. */
export const STANDS_STILL_ON = '2025-12-31';
export const MONTHS = 12;
export const ORGANIZATION_ID = id(1, 0);

/** An id that follows from its kind and number. */
function id(kind, at) {
  return `${kind.toString(16).padStart(8, '0')}-0000-4000-8000-${at.toString(16).padStart(12, '0')}`;
}

const [CLIENT, STATION, PROPERTY, METER, CONTROLLER, ZONE, SETTINGS, READING] = [2, 3, 4, 5, 6, 7, 8, 9];
const day = (from, at) => new Date(from + at * DAY_MS).toISOString().slice(0, 10);
const wave = (at) => Math.abs((Math.sin(at * 12.9898) * 43_758.5453) % 1);

function weatherDay(station, nth) {
  const season = Math.sin((2 * Math.PI * (nth - 170)) / 365);
  const odd = wave(station * WEATHER_DAYS + nth);
  const warm = 22 + 11 * season + 4 * odd;
  const storm = season < 0.2 && wave(7 * nth + (station % 9)) < 0.18;
  return [
    id(STATION, station),
    day(FIRST_WEATHER, nth),
    warm.toFixed(1),
    (warm - 14).toFixed(1),
    (78 + 10 * odd).toFixed(0),
    (30 + 12 * odd).toFixed(0),
    (1.6 + 1.2 * odd).toFixed(2),
    2,
    (15 + 9 * season + 2 * odd).toFixed(2),
    storm ? (2 + 25 * odd).toFixed(1) : 0,
  ];
}

const zone = (property, at, zones) => [
  id(ZONE, property * zones + at),
  id(PROPERTY, property),
  `Zone ${String(at + 1).padStart(2, '0')}`,
  id(CONTROLLER, property),
  at + 1,
  120 + 15 * ((at + property) % 20),
  PLANTS[at % PLANTS.length],
  at % 5 === 4 ? 'drip' : 'spray',
  30 + 2 * at,
  'measured',
  at % 3 === 0 ? 0.62 : '\\N',
  ['loam', 'clay loam', 'sandy loam'][property % 3],
];

function settings(property, which, zones) {
  const stations = Array.from({ length: zones }, (_, at) => ({
    station: at + 1,
    minutes: 5 + 4 * which + (at % 4),
    cycles: 2,
    soakMinutes: 20,
  }));
  const program = { name: 'A', days: 'Mon Wed Fri', starts: ['02:00'], adjustPercent: 100, stations };
  const at = ['2025-01-01T09:00:00-08:00', '2025-05-06T09:00:00-07:00'][which];
  return [id(SETTINGS, 2 * property + which), id(CONTROLLER, property), at, 'left', 'on', JSON.stringify([program])];
}

/** Every fortnight at noon; one property passes more than its neighbour, and more in summer. */
function readings(property) {
  let register = 20_000;
  return Array.from({ length: READINGS }, (_, at) => {
    const season = 1 + 0.8 * Math.sin((2 * Math.PI * (14 * at - 80)) / 365);
    register += Math.round(season * (24_000 + 1500 * (property % 20)));
    return [id(READING, property * READINGS + at), id(METER, property), `${day(Date.UTC(2025, 0, 1), 14 * at)}T20:00:00Z`, register];
  });
}

const range = (length, of) => Array.from({ length }, (_, at) => of(at));

function* rowsOf(properties, of) {
  for (let at = 0; at < properties; at++) for (const row of of(at)) yield `${[ORGANIZATION_ID, ...row].join('\t')}\n`;
}

/** Fills the tables by COPY. */
export async function fillPortfolio(admin, { properties, zones, stations }) {
  const copy = (table, columns, count, of) =>
    pipeline(Readable.from(rowsOf(count, of)), admin.query(copyFrom(`copy ${table} (organization_id, ${columns}) from stdin`)));
  await admin.query('begin');
  await admin.query(`select set_config('app.organization_id', $1, true)`, [ORGANIZATION_ID]);
  await admin.query('insert into organization (id, name, stands_still_on) values ($1, $2, $3)', [
    ORGANIZATION_ID,
    'Portfolio',
    STANDS_STILL_ON,
  ]);
  await copy('client', 'id, name', 1, () => [[id(CLIENT, 0), 'One client']]);
  await copy('weather_station', 'id, name, latitude, longitude, elevation_m', stations, (at) => [
    [id(STATION, at), `Station ${at}`, (34 + at / stations).toFixed(4), (-118 - at / stations).toFixed(4), 50 + (at % 90)],
  ]);
  await copy(
    'weather_day',
    'station_id, day, tmax_c, tmin_c, rh_max_percent, rh_min_percent, wind_m_per_s, wind_height_m, solar_mj_per_m2, rain_mm',
    stations,
    (at) => range(WEATHER_DAYS, (nth) => weatherDay(at, nth)),
  );
  await copy('property', 'id, client_id, name, time_zone, weather_station_id, allowance_from, allowance_etaf', properties, (at) => [
    [
      id(PROPERTY, at),
      id(CLIENT, 0),
      `Property ${String(at).padStart(5, '0')}`,
      'America/Los_Angeles',
      id(STATION, at % stations),
      'ordinance',
      0.8,
    ],
  ]);
  await copy('meter', 'id, property_id, name, unit, digits, resolution, price_per_unit', properties, (at) => [
    [id(METER, at), id(PROPERTY, at), 'M', 'gal', 9, 1, 0.008],
  ]);
  await copy('controller', 'id, property_id, name, stations', properties, (at) => [[id(CONTROLLER, at), id(PROPERTY, at), 'C', zones]]);
  await copy(
    'zone',
    'id, property_id, name, controller_id, station, area_m2, plants, method, flow_l_per_min, flow_source, du_lq, soil',
    properties,
    (at) => range(zones, (nth) => zone(at, nth, zones)),
  );
  await copy('settings', 'id, controller_id, effective_at, record, state, programs', properties, (at) => [
    settings(at, 0, zones),
    settings(at, 1, zones),
  ]);
  await copy('reading', 'id, meter_id, read_at, register', properties, readings);
  await admin.query('commit');
  await admin.query('analyze');
}
