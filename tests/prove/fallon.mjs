// The real weather year of Fallon, Nevada, 2015, through the product's own import and through the library: ETo and ETr of every
// complete day within 0.02 mm of the published output (ETr of 10 mm and more is printed to 0.1 only, and may be 0.015 mm past its rounding), each month's sum within 1 %, the year's within 0.5 %. That file has no rain, so
// only reference ET is compared. On 22 April wind was not recorded: the published run has calm air there, the product assumes 2 m/s by
// FAO-56 chapter 3. The day is shown, not compared.
import { execFileSync } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { EtoSeries } from '../../apps/api/dist/features/accounts/gather/eto-series.js';
import { entities } from '../../apps/api/dist/entities.js';
import { appDataSource } from '../../apps/api/dist/platform/database/data-source.js';
import { findDatabase } from '../../apps/api/dist/platform/database/database-url.js';
import { inTransaction } from '../../apps/api/dist/platform/database/organization-transaction.js';
import { organizationActor } from '../../apps/api/dist/platform/database/actor.js';
import { fallon, measuredDays, printedDays } from '../support/fallon-2015.mjs';
import { transcribed } from '../support/golden-values.mjs';
import { libraryDays } from '../support/fallon-2015-computed.mjs';

export const readsShared = true;

const top = path.resolve(import.meta.dirname, '../..');
const MM_PER_INCH = 25.4;
const FEET_PER_METRE = 1 / 0.3048;
const MJ_PER_LANGLEY = 0.041868;
/** How far a day may be past the rounding of the published output: 0.02 mm from what is printed to 0.01. [mm] */
const PAST_ROUNDING = 0.015;
/** From here on the published output is printed to 0.1. [mm] */
const COARSE_FROM = 10;
/** Days of the year on which everything was measured. */
const COMPLETE_DAYS = 364;
/** Wind of this day was not recorded. */
const WITHOUT_WIND = '2015-04-22';
const NAME = 'Fallon proof';

function writeFolder(folder) {
  const write = (name, rows) => writeFileSync(path.join(folder, name), `${rows.map((row) => row.join(',')).join('\n')}\n`);
  write('stations.csv', [
    ['station', 'latitude', 'longitude', 'elevation_ft'],
    ['Dry valley', fallon.latitude, fallon.longitude, fallon.elevation * FEET_PER_METRE],
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
    ...measuredDays().map((day) => [
      'Dry valley',
      day.date,
      day.tmax,
      day.tmin,
      day.dewPoint,
      day.wind,
      fallon.windHeight * FEET_PER_METRE,
      day.solar === null ? null : day.solar * MJ_PER_LANGLEY,
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
const must = (says, good) => {
  if (!good) throw new Error(says);
};

const allowed = (theirs) => (theirs < COARSE_FROM ? 0.005 : 0.05) + PAST_ROUNDING;

/** The greatest distance from the published output, and how many days lie within the tolerance. */
function compared(what, pairs) {
  const fine = pairs.filter(({ theirs }) => theirs < COARSE_FROM);
  const off = ({ ours, theirs }) => Math.abs(ours - theirs);
  const within = (days) => days.filter((day) => off(day) <= allowed(day.theirs)).length;
  const most = (days) => Math.max(...days.map(off)).toFixed(4);
  const coarse = pairs.filter(({ theirs }) => theirs >= COARSE_FROM);
  const printed = coarse.length
    ? `; ${within(coarse)} of ${coarse.length} printed to 0.1 within ${allowed(COARSE_FROM).toFixed(3)} mm, at most ${most(coarse)}`
    : '';
  const says = `${what}: ${within(fine)} of ${fine.length} days within ${allowed(0).toFixed(2)} mm, at most ${most(fine)} away${printed}`;
  must(says, within(pairs) === pairs.length && pairs.length === COMPLETE_DAYS);
  return says;
}

/** Each month of one reference against the published output, and the twelve sums that the golden tests have. */
function monthsOf(name, pairs, golden) {
  const lines = [];
  const sums = { ours: 0, theirs: 0 };
  for (const [month, count, ours, theirs, kept] of golden.map(([nth, ...rest]) => {
    const days = pairs.filter(({ date }) => Number(date.slice(5, 7)) === nth);
    const sum = (of) => days.reduce((total, day) => total + day[of], 0);
    return [nth, days.length, sum('ours'), sum('theirs'), rest.at(name === 'ETo' ? -2 : -1)];
  })) {
    sums.ours += ours;
    sums.theirs += theirs;
    const off = ours / theirs - 1;
    lines.push(
      `2015-${String(month).padStart(2, '0')}  ${count} days  ${name} ours ${ours.toFixed(2)} mm  published ${theirs.toFixed(2)} mm  ${percent(off)}`,
    );
    must(`${lines.at(-1)}: more than 1 % off`, Math.abs(off) <= 0.01);
    must(`${lines.at(-1)}: ${kept} is transcribed`, Math.abs(kept - theirs) < 0.005);
  }
  const off = sums.ours / sums.theirs - 1;
  lines.push(
    `the year  ${pairs.length} days  ${name} ours ${sums.ours.toFixed(1)} mm (${(sums.ours / MM_PER_INCH).toFixed(2)} in)  published ${sums.theirs.toFixed(1)} mm  ${percent(off)}`,
  );
  must(`${lines.at(-1)}: more than 0.5 % off`, Math.abs(off) <= 0.005);
  return lines;
}

/** Three ways to the same days: the product's ETo, the library's ETo in one loop, and the library's ETr. */
async function judge(product) {
  const printed = printedDays();
  const measured = measuredDays();
  const complete = measured.filter((day) => !Object.values(day).includes(null)).map((day) => day.date);
  const library = libraryDays(measured);
  const pairs = (ours, name) => complete.map((date) => ({ date, ours: ours.get(date), theirs: printed.get(date)[name] }));
  const [eto, loop, etr] = [pairs(product, 'eto'), pairs(library.loop, 'eto'), pairs(library.etr, 'etr')];
  const { days, months } = await transcribed('asce-standardized/fallon-2015.values.ts');
  for (const [date, ...row] of days) {
    const day = measured.find((each) => each.date === date);
    const { eto: printedEto, etr: printedEtr } = printed.get(date);
    const now = [day.tmin, day.tmax, day.solar, day.dewPoint, day.wind, printedEto, printedEtr];
    must(`${date} is transcribed as ${row}, published is ${now}`, row.join() === now.join());
  }
  const calm = printed.get(WITHOUT_WIND);
  return [
    compared('ETo through the import', eto),
    compared('ETo through the loop over columns', loop),
    compared('ETr', etr),
    ...monthsOf('ETo', eto, months),
    ...monthsOf('ETr', etr, months),
    `${days.length} days and ${months.length} months of the golden tests are as published`,
    `${WITHOUT_WIND}  wind not recorded  ours ${product.get(WITHOUT_WIND).toFixed(2)} mm with 2 m/s assumed  published ETo ${calm.eto} and ETr ${calm.etr} mm with wind ${calm.wind}; ours with calm air ${library.calm.toFixed(2)} mm`,
  ];
}

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
    return (await judge(await computed(environment))).join('\n');
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
