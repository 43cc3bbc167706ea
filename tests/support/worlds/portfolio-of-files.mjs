// A portfolio as a folder of files: so many properties with zones, settings, a meter and its readings, and weather for
// June to August 2026. The same on every run.

const DAY_MS = 86_400_000;
const table = (head, rows) => `${[head, ...rows].join('\n')}\n`;
const day = (from, at) => new Date(Date.parse(from) + at * DAY_MS).toISOString().slice(0, 10);
const list = (length, make) => Array.from({ length }, (_, at) => make(at));
const PLANTS = ['turf cool-season', 'shrubs', 'groundcover', 'trees'];
const WEATHER_DAYS = 185;
const STATIONS = 4;
/** Weekly, from the first midnight of June to the last of August. */
const READINGS = 14;

/** The months that have an account, and the day on which the organization's clock stands so that there are no others. */
export const MONTHS = ['2026-06', '2026-07', '2026-08'];
export const STANDS_STILL_ON = '2026-08-31';

function weatherRow(at) {
  const [station, nth] = [at % STATIONS, Math.floor(at / STATIONS)];
  const warm = 72 + 18 * Math.sin(nth / 58) + station;
  return [
    `Station ${station + 1}`,
    day('2026-03-01', nth),
    warm.toFixed(1),
    (warm - 27).toFixed(1),
    85,
    30,
    5,
    10,
    (22 + 4 * Math.sin(nth / 58)).toFixed(1),
    nth % 13 === 0 ? 0.2 : 0,
  ].join(',');
}

/** A reading a week, of a meter that passes more than its neighbour. */
const readingRow = (property, at) =>
  [property, 'M', `${day('2026-06-01', 7 * at)}T00:00`, 20_000 + at * (9000 + 400 * (Number(property.split(' ')[1]) % 20)), 'crew'].join(
    ',',
  );

function zoneRow(property, at, zones) {
  return [
    property,
    `Zone ${at + 1}`,
    'C',
    at + 1,
    1200 + 150 * (at % zones),
    PLANTS[at % PLANTS.length],
    'spray',
    (12 + at).toFixed(1),
    'measured',
    0.6,
  ].join(',');
}

export function portfolioFiles({ properties, zones }) {
  const names = list(properties, (at) => `Property ${at + 1}`);
  const each = (make) => names.flatMap(make);
  const settings = (effectiveAt, minutes) => (name) =>
    list(zones, (at) =>
      [name, 'C', `${effectiveAt}T09:00`, 'left', 'A', 'Mon Wed Fri', '02:00', 100, at + 1, minutes + (at % 4)].join(','),
    );
  return {
    'clients.csv': table('client', ['One client']),
    'stations.csv': table(
      'station,latitude,longitude,elevation_ft',
      list(STATIONS, (at) => `Station ${at + 1},38.${at},-121.0${at},241`),
    ),
    'properties.csv': table(
      'property,client,time_zone,weather_station,allowance_from,allowance_etaf',
      names.map((name, at) => `${name},One client,America/Los_Angeles,Station ${(at % STATIONS) + 1},ordinance,0.8`),
    ),
    'meters.csv': table(
      'meter,property,kind,unit,digits,resolution',
      names.map((name) => `M,${name},irrigation,gal,8,1`),
    ),
    'controllers.csv': table(
      'controller,property,stations',
      names.map((name) => `C,${name},24`),
    ),
    'zones.csv': table(
      'property,zone,controller,station,area_sqft,plants,method,flow_gpm,flow_source,du_lq',
      each((name) => list(zones, (at) => zoneRow(name, at, zones))),
    ),
    'settings.csv': table('property,controller,effective_at,record,program,days,starts,adjust_percent,station,minutes', [
      ...each(settings('2026-06-01', 12)),
      ...each(settings('2026-07-10', 16)),
    ]),
    'readings.csv': table(
      'property,meter,read_at,register,source',
      each((name) => list(READINGS, (at) => readingRow(name, at))),
    ),
    'weather.csv': table(
      'station,date,tmax_f,tmin_f,rhmax,rhmin,wind_mph,wind_height_ft,solar_mj_m2,rain_in',
      list(STATIONS * WEATHER_DAYS, weatherRow),
    ),
  };
}
