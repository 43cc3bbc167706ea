import { randomUUID } from 'node:crypto';
import { settleQueue } from '../../apps/api/dist/platform/jobs/settle-queue.js';
import { RECOMPUTE } from '../../apps/api/dist/features/accounts/recompute/recompute.job.js';
import { folderFiles } from '../../apps/api/dist/features/exchange/files/folder-files.js';
import { ImportDeed } from '../../apps/api/dist/features/exchange/import/import-deed.service.js';
import { portfolio } from '../../apps/api/dist/features/overview/portfolio.repository.js';
import { organizationActor } from '../../apps/api/dist/platform/database/actor.js';
import { inTransaction } from '../../apps/api/dist/platform/database/organization-transaction.js';
import { organizations } from '../../apps/api/dist/platform/identity/organizations/organization.repository.js';
import { Jobs } from '../../apps/api/dist/platform/jobs/jobs.js';
import { count, percentile, ratio, times } from '../support/measure.mjs';
import { MONTHS, portfolioFiles, STANDS_STILL_ON } from '../support/worlds/portfolio-of-files.mjs';
import { inTemporaryProduct } from '../support/worlds/temporary-product.mjs';

export const tells = 'accounts of 100 properties of 12 zones over 3 months, and the portfolio page over them, against empty round trips';

const PROPERTIES = 100;
const ZONES = 12;
const ASKED = { warmUps: 50, runs: 500 };
const DEVIATE = 1.28;

async function organizationOf({ app, admin, folder }) {
  const by = organizationActor(randomUUID(), 'import');
  const report = await app
    .get(ImportDeed)
    .run(by, await folderFiles(folder), { rows: 'all', begin: (tx) => organizations.add(tx, 'Portfolio') });
  if (!report.written) throw new Error(`the portfolio was not imported: ${report.problemsTotal} wrong rows`);
  await admin.query('begin');
  await admin.query(`select set_config('app.organization_id', $1, true)`, [by.organizationId]);
  await admin.query('update organization set stands_still_on = $2 where id = $1', [by.organizationId, STANDS_STILL_ON]);
  await admin.query('commit');
  return by.organizationId;
}

/** The accounts as they are computed first, and again where nothing has changed. [ms] */
async function recompute({ app, source, database }, id) {
  const queue = { source, adminUrl: database.adminUrl, jobs: app.get(Jobs) };
  const settle = () => settleQueue(queue, id);
  const [first] = await times(settle, { warmUps: 0, runs: 1 });
  const ask = () => inTransaction(source, organizationActor(id, 'job'), (tx) => queue.jobs.ask(tx, RECOMPUTE, {}));
  const [again] = await times(
    async () => {
      await ask();
      await settle();
    },
    { warmUps: 0, runs: 1 },
  );
  return { first, again };
}

/** The page's query and an empty one, in one transaction. [ms] */
const ask = ({ source }, id) =>
  inTransaction(source, organizationActor(id, 'job'), async (tx) => {
    const lines = () => portfolio.lines(tx, MONTHS.at(-1), {}, { order: 'money', deviate: DEVIATE });
    if ((await lines()).length !== PROPERTIES) throw new Error('the portfolio does not have every property');
    return { empty: await times(() => tx.query('select 1'), ASKED), page: await times(lines, ASKED) };
  });

async function judge({ admin }, id) {
  await admin.query('begin');
  await admin.query(`select set_config('app.organization_id', $1, true)`, [id]);
  const { rows } = await admin.query(
    'select count(*)::int as kept, count(metered_l)::int as metered, count(needed_l)::int as needed, count(programmed_l)::int as programmed from month_account where organization_id = $1 and meter_id is null',
    [id],
  );
  await admin.query('commit');
  const [{ kept, ...known }] = rows;
  if (kept !== PROPERTIES * MONTHS.length || Object.values(known).some((value) => value < kept))
    throw new Error(`${kept} accounts, of which ${JSON.stringify(known)}`);
}

export async function bench() {
  return inTemporaryProduct(portfolioFiles({ properties: PROPERTIES, zones: ZONES }), async (product) => {
    const id = await organizationOf(product);
    const { first, again } = await recompute(product, id);
    await judge(product, id);
    const unknown = await ask(product, id);
    await product.admin.query('analyze');
    const known = await ask(product, id);
    const [p50, p95] = [0.5, 0.95].map((share) => ({
      empty: percentile(known.empty, share),
      page: percentile(known.page, share),
      unknown: percentile(unknown.page, share),
    }));
    const accounts = PROPERTIES * MONTHS.length;
    return [
      `${accounts} accounts first ${(first / 1000).toFixed(2)} s (${count((1000 * accounts) / first)} accounts/s), nothing changed ${(again / 1000).toFixed(2)} s; the queue is looked at every quarter of a second`,
      `the page's query p50 ${p50.page.toFixed(2)} ms, p95 ${p95.page.toFixed(2)} ms; select 1 p50 ${p50.empty.toFixed(2)} ms, p95 ${p95.empty.toFixed(2)} ms; the page before the database has statistics p50 ${p50.unknown.toFixed(2)} ms, p95 ${p95.unknown.toFixed(2)} ms`,
      `ratio: an account takes ${ratio(first / accounts / p50.empty)} an empty round trip, the page ${ratio(p50.page / p50.empty)} (p95 ${ratio(p95.page / p95.empty)}); without statistics the page takes ${ratio(p50.unknown / p50.page)} its time; nothing changed ${ratio(again / first)} the first computation`,
    ];
  });
}
