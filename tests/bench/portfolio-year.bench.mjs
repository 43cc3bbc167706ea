import { settleQueue } from '../../apps/api/dist/platform/jobs/settle-queue.js';
import { RECOMPUTE } from '../../apps/api/dist/features/accounts/recompute/recompute.job.js';
import { organizationActor } from '../../apps/api/dist/platform/database/actor.js';
import { inTransaction } from '../../apps/api/dist/platform/database/organization-transaction.js';
import { Jobs } from '../../apps/api/dist/platform/jobs/jobs.js';
import { count, ratio, times } from '../support/measure.mjs';
import { fillPortfolio, MONTHS, ORGANIZATION_ID } from '../support/worlds/portfolio-of-rows.mjs';
import { inTemporaryProduct } from '../support/worlds/temporary-product.mjs';

const PROPERTIES = Number(process.env.BENCH_PROPERTIES ?? 5000);
const ZONES = 20;
const STATIONS = Number(process.env.BENCH_STATIONS ?? 100);

export const tells = `accounts and findings of ${count(PROPERTIES)} properties of ${ZONES} zones over a year, from the database to the database, against reading the same weather and copying the same accounts`;

/** Work: its time, the processor time of this process in it [ms], and the most memory that the process held meanwhile. */
async function watched(work) {
  let most = 0;
  const before = process.cpuUsage();
  const look = () => {
    most = Math.max(most, process.memoryUsage().rss);
  };
  look();
  const timer = setInterval(look, 50);
  const [ms] = await times(work, { warmUps: 0, runs: 1 });
  clearInterval(timer);
  look();
  const { user, system } = process.cpuUsage(before);
  return { ms, ownMs: (user + system) / 1000, mostMb: most / 2 ** 20 };
}

/** Reads the weather that the accounts read, and writes the accounts that they wrote into a table of the same columns and keys. */
async function floor({ admin }) {
  await admin.query('create temp table kept as select * from month_account where organization_id = $1', [ORGANIZATION_ID]);
  await admin.query('create table again (like month_account including indexes)');
  const [read] = await times(() => admin.query({ text: 'select * from weather_day', rowMode: 'array' }), { warmUps: 1, runs: 1 });
  const [write] = await times(() => admin.query('insert into again select * from kept'), { warmUps: 0, runs: 1 });
  await admin.query('drop table again');
  const { rows } = await admin.query(
    'select count(*)::int as accounts, sum(pg_column_size(kept.*))::float8 / count(*) as bytes, (select count(*)::int from finding) as findings, (select count(*)::int from weather_day) as days from kept',
  );
  return { read, write, ...rows[0] };
}

/** Fewer than a large job's: the job's own thread computes them. */
const SAMPLE = 60;

/** Computes some properties again in the job's own thread, and compares with what other threads came to. */
async function checkSample(admin, recompute) {
  const of = [ORGANIZATION_ID, SAMPLE];
  const sample = 'select id from property where organization_id = $1 order by id limit $2';
  const told = async () => {
    const { rows } = await admin.query(
      `select count(*)::int as accounts, md5(string_agg(md5((to_jsonb(a) - 'id' - 'computed_at')::text), '' order by property_id, month)) as all from month_account a where organization_id = $1 and property_id in (${sample})`,
      of,
    );
    return rows[0];
  };
  const before = await told();
  const { rows } = await admin.query(sample, of);
  await admin.query(
    `update month_account set detail = '', metered_l = null, inputs_version = '' where organization_id = $1 and property_id in (${sample})`,
    of,
  );
  await recompute({ propertyIds: rows.map(({ id }) => id) });
  const after = await told();
  if (!(before.accounts > 0 && before.all === after.all))
    throw new Error(`threads came to other accounts: ${JSON.stringify({ before, after })}`);
}

export async function bench() {
  return inTemporaryProduct({}, async (product) => {
    const { app, admin, source, database } = product;
    await fillPortfolio(admin, { properties: PROPERTIES, zones: ZONES, stations: STATIONS });
    const queue = { source, adminUrl: database.adminUrl, jobs: app.get(Jobs) };
    const recompute = async (payload = {}) => {
      await inTransaction(source, organizationActor(ORGANIZATION_ID, 'job'), (tx) => queue.jobs.ask(tx, RECOMPUTE, payload));
      const ended = await settleQueue(queue, ORGANIZATION_ID);
      if (!ended.length || ended.some(({ isDone }) => !isDone)) throw new Error(`the accounts failed: ${JSON.stringify(ended)}`);
    };
    const first = await watched(() => recompute());
    const again = await watched(() => recompute());
    // Whoever wants to be told of other amounts has everything judged anew, by accounts that stand.
    await admin.query('update organization set least_money = least_money + 0.01 where id = $1', [ORGANIZATION_ID]);
    const judged = await watched(() => recompute());
    await checkSample(admin, recompute);
    const least = await floor(product);
    if (least.accounts !== PROPERTIES * MONTHS) throw new Error(`${least.accounts} accounts`);
    const cost = ({ ms, ownMs, mostMb }) =>
      `${(ms / 1000).toFixed(1)} s, ${(ownMs / 1000).toFixed(1)} s of its own, at most ${count(mostMb)} MB`;
    const perSecond = (ms) => count((1000 * least.accounts) / ms);
    return [
      `${count(least.accounts)} accounts (${count(least.bytes)} bytes each) and ${count(least.findings)} findings in ${(first.ms / 1000).toFixed(1)} s: ${perSecond(first.ms)} accounts/s, ${(first.ownMs / 1000).toFixed(1)} s of this process's own processor time, at most ${count(first.mostMb)} MB`,
      `the same again where nothing has changed: ${cost(again)}`,
      `the same judged anew, by accounts that stand: ${cost(judged)}`,
      `ratio: ${ratio(first.ms / (least.read + least.write))} the time of reading ${count(least.days)} weather days (${(least.read / 1000).toFixed(2)} s) and inserting the same accounts (${(least.write / 1000).toFixed(2)} s)`,
    ];
  });
}
