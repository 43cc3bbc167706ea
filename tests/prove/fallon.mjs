// The real weather year of Fallon, Nevada, 2015 (USBR AgriMet, with the output of the University of Idaho's
// reference ET calculator), through the product's own import: each month's reference ET within 1 % of the published
// output, the year within 0.5 %. That file has no rain, so only reference ET is compared. A day on which a value was
// not measured (22 April, no wind) is filled by FAO-56 chapter 3 here and with the day before there: it is shown, not
// compared.
import { execFileSync } from 'node:child_process';
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { EtoSeries } from '../../apps/api/dist/features/accounts/gather/eto-series.js';
import { entities } from '../../apps/api/dist/entities.js';
import { appDataSource } from '../../apps/api/dist/platform/database/data-source.js';
import { findDatabase } from '../../apps/api/dist/platform/database/database-url.js';
import { inTransaction } from '../../apps/api/dist/platform/database/organization-transaction.js';
import { organizationActor } from '../../apps/api/dist/platform/database/actor.js';

export const readsShared = true;

const top = path.resolve(import.meta.dirname, '../..');
const data = path.resolve(top, '../shared/data/weather');
const MM_PER_INCH = 25.4;
const MJ_PER_LANGLEY = 0.041868;
const NAME = 'Fallon proof';

const text = (name) => readFileSync(path.join(data, name), 'utf8');

/** The measured days: temperatures and dew point in °F, solar in langleys, wind in mph. */
function measured() {
  const [head, ...lines] = text('FALN_Agrimet_daily_raw_2015.csv').trim().split(/\r?\n/);
  const at = Object.fromEntries(head.split(',').map((name, index) => [name.trim(), index]));
  return lines.map((line) => {
    const cells = line.split(',').map((cell) => cell.trim());
    const value = (name) =>
      Number.isFinite(Number(cells[at[name]])) && cells[at[name]] !== '' && Number(cells[at[name]]) !== -999 ? cells[at[name]] : '';
    return {
      date: `${cells[at.YEAR]}-${cells[at.MONTH]}-${cells[at.DAY]}`,
      tmin: value('MN'),
      tmax: value('MX'),
      solar: value('SR'),
      dew: value('YM'),
      wind: value('UA'),
    };
  });
}

/** The published short reference ET of each day [mm]: the tenth column of the table of days. */
function published() {
  const days = new Map();
  for (const line of text('FALN_Agrimet_daily_raw_2015.out').split(/\r?\n/)) {
    const cells = line.trim().split(/\s+/);
    if (cells.length < 10 || !/^\d{1,2}$/.test(cells[0]) || !/^\d{1,2}$/.test(cells[1]) || cells[2] !== '2015') continue;
    days.set(`2015-${cells[0].padStart(2, '0')}-${cells[1].padStart(2, '0')}`, Number(cells[9]));
  }
  return days;
}

function writeFolder(folder) {
  const write = (name, rows) => writeFileSync(path.join(folder, name), `${rows.map((row) => row.join(',')).join('\n')}\n`);
  write('stations.csv', [
    ['station', 'latitude', 'longitude', 'elevation_ft'],
    ['Dry valley', 39.4575, -118.77388, 1208.5 / 0.3048],
  ]);
  write('clients.csv', [['client'], ['One client']]);
  write('properties.csv', [
    ['property', 'client', 'time_zone', 'weather_station', 'allowance_from', 'allowance_etaf'],
    ['One lawn', 'One client', 'America/Los_Angeles', 'Dry valley', 'ordinance', 0.45],
  ]);
  write('zones.csv', [
    ['property', 'zone', 'area_sqft', 'plants', 'method'],
    ['One lawn', 'Lawn', 5000, 'turf cool-season', 'hand'],
  ]);
  const head = ['station', 'date', 'tmax_f', 'tmin_f', 'dewpoint_f', 'wind_mph', 'wind_height_ft', 'solar_mj_m2'];
  write('weather.csv', [
    head,
    ...measured().map((day) => [
      'Dry valley',
      day.date,
      day.tmax,
      day.tmin,
      day.dew,
      day.wind,
      3 / 0.3048,
      day.solar === '' ? '' : Number(day.solar) * MJ_PER_LANGLEY,
    ]),
  ]);
}

/** The reference ET that the product computes from what it imported, by date [mm]. */
async function computed(environment) {
  const database = await findDatabase(environment);
  const source = await appDataSource(database.appUrl, entities).initialize();
  try {
    const admin = appDataSource(database.adminUrl, []);
    await admin.initialize();
    const [{ id }] = await admin.query('select id from organization where name = $1', [NAME]);
    await admin.destroy();
    return await inTransaction(source, organizationActor(id, 'job'), async (tx) => {
      const [station] = await tx.query('select id from weather_station where organization_id = $1', [id]);
      return new Map((await EtoSeries.of(tx, station.id)).days.map((day) => [day.date, day.etoMm]));
    });
  } finally {
    await source.destroy();
    await database.close();
  }
}

const percent = (share) => `${(100 * share).toFixed(2)} %`;

export async function prove() {
  const folder = mkdtempSync(path.join(tmpdir(), 'rillbook-fallon-'));
  // The database's own account must be able to enter it.
  chmodSync(folder, 0o755);
  const environment = { ...process.env, DATA_DIR: path.join(folder, 'data') };
  try {
    writeFolder(folder);
    execFileSync(process.execPath, [path.join(top, 'apps/api/dist/cli.js'), 'import', folder, '--organization', NAME], {
      env: environment,
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    const ours = await computed(environment);
    const filled = new Set(
      measured()
        .filter((day) => Object.values(day).includes(''))
        .map((day) => day.date),
    );
    const all = [...published()].filter(
      ([date, eto]) => Number.isFinite(eto) && eto > -90 && ours.get(date) !== null && ours.get(date) !== undefined,
    );
    const theirs = all.filter(([date]) => !filled.has(date));
    if (theirs.length < 360) throw new Error(`only ${theirs.length} days could be compared`);
    const lines = [];
    const sums = { ours: 0, theirs: 0 };
    for (let month = 1; month <= 12; month++) {
      const days = theirs.filter(([date]) => Number(date.slice(5, 7)) === month);
      const our = days.reduce((sum, [date]) => sum + ours.get(date), 0);
      const their = days.reduce((sum, [, eto]) => sum + eto, 0);
      sums.ours += our;
      sums.theirs += their;
      const off = our / their - 1;
      lines.push(
        `2015-${String(month).padStart(2, '0')}  ${days.length} days  ours ${our.toFixed(2)} mm  published ${their.toFixed(2)} mm  ${percent(off)}`,
      );
      if (Math.abs(off) > 0.01) throw new Error(`${lines.at(-1)}: more than 1 % off`);
    }
    const off = sums.ours / sums.theirs - 1;
    lines.push(
      `the year  ${theirs.length} days  ours ${sums.ours.toFixed(1)} mm (${(sums.ours / MM_PER_INCH).toFixed(2)} in)  published ${sums.theirs.toFixed(1)} mm  ${percent(off)}`,
    );
    if (Math.abs(off) > 0.005) throw new Error(`${lines.at(-1)}: more than 0.5 % off`);
    for (const [date, eto] of all.filter(([day]) => filled.has(day)))
      lines.push(`${date}  not all measured  ours ${ours.get(date).toFixed(2)} mm  published ${eto.toFixed(2)} mm`);
    return lines.join('\n');
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
