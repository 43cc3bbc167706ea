import { randomUUID } from 'node:crypto';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { from as copyFrom } from 'pg-copy-streams';
import { folderFiles } from '../../apps/api/dist/features/exchange/files/folder-files.js';
import { ImportDeed } from '../../apps/api/dist/features/exchange/import/import-deed.service.js';
import { organizationActor } from '../../apps/api/dist/platform/database/actor.js';
import { organizations } from '../../apps/api/dist/platform/identity/organizations/organization.repository.js';
import { count, percentile, ratio, times } from '../support/measure.mjs';
import { inTemporaryProduct } from '../support/worlds/temporary-product.mjs';
import { world } from '../support/world-of-rows.mjs';

export const tells = '50,000 rows of weather, readings and usage, checked and merged, against a bare COPY of the same files';

const ROWS = 50_000;
const RUNS = 5;
const FACTS = ['weather', 'readings', 'usage'];
const NUMBERS = new Set([
  'tmax_f',
  'tmin_f',
  'rhmax',
  'rhmin',
  'wind_mph',
  'wind_height_ft',
  'solar_mj_m2',
  'rain_in',
  'register',
  'volume',
]);

/** A table with the file's own columns, without a key, and its rows put in as they stand. */
async function copy(admin, name, text) {
  const columns = text.slice(0, text.indexOf('\n')).split(',');
  await admin.query(
    `create table bare_${name} (${columns.map((column) => `"${column}" ${NUMBERS.has(column) ? 'double precision' : 'text'}`).join(', ')})`,
  );
  await pipeline(Readable.from([text]), admin.query(copyFrom(`copy bare_${name} from stdin with (format csv, header)`)));
}

async function bare(admin, files) {
  await admin.query('begin');
  for (const name of FACTS) await copy(admin, name, files[`${name}.csv`]);
  await admin.query('commit');
}

const drop = (admin) => admin.query(`drop table if exists ${FACTS.map((name) => `bare_${name}`).join(', ')}`);

/** Each run imports into an organization of its own; the same rows again come last. */
async function measure({ app, admin, folder }, files) {
  const deed = app.get(ImportDeed);
  const into = async (by, wish) => {
    const report = await deed.run(by, await folderFiles(folder), { rows: 'all', ...wish });
    if (!report.written || report.problemsTotal) throw new Error(`${report.problemsTotal} rows were not taken`);
    return report.rows;
  };
  let by;
  let rows = 0;
  const imports = await times(
    async () => {
      by = organizationActor(randomUUID(), 'import');
      rows = await into(by, { begin: (tx) => organizations.add(tx, `Rows ${by.organizationId}`) });
    },
    { warmUps: 1, runs: RUNS },
  );
  const again = await times(() => into(by, {}), { warmUps: 0, runs: RUNS });
  const copies = [];
  for (let run = 0; run < RUNS + 1; run++) {
    await drop(admin);
    copies.push(...(await times(() => bare(admin, files), { warmUps: 0, runs: 1 })));
  }
  const [{ held }] = (await admin.query(`select (${FACTS.map((name) => `(select count(*) from bare_${name})`).join(' + ')})::int as held`))
    .rows;
  if (held !== ROWS) throw new Error(`COPY took ${held} rows of ${ROWS}`);
  return { rows, imports, again, copies: copies.slice(1) };
}

export async function bench() {
  const files = world({ rows: ROWS });
  const { rows, imports, again, copies } = await inTemporaryProduct(files, (product) => measure(product, files));
  const [first, same, bareCopy] = [imports, again, copies].map((all) => percentile(all, 0.5));
  const perSecond = (ms) => `${count((rows / ms) * 1000)} rows/s`;
  return [
    `import ${perSecond(first)} (${count(rows)} rows in ${(first / 1000).toFixed(1)} s), the same rows again ${perSecond(same)}, bare COPY ${perSecond(bareCopy)}`,
    `ratio: import takes ${ratio(first / bareCopy)} the time of COPY, the same rows again ${ratio(same / bareCopy)}`,
  ];
}
