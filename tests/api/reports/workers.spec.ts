import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { DataSource } from 'typeorm';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { organizationActor } from '../../../apps/api/src/platform/database/actor.js';
import { inTransaction } from '../../../apps/api/src/platform/database/organization-transaction.js';
import { Jobs } from '../../../apps/api/src/platform/jobs/jobs.js';
import { LivingWorkers } from '../../../apps/api/src/platform/jobs/living-workers.js';
import { drainQueue } from '../../../apps/api/src/platform/jobs/worker.js';
import { aProperty, insertRow } from '../../support/builders.js';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';

let product: TestApp;
const outbox = mkdtempSync(path.join(tmpdir(), 'rillbook-workers-'));

beforeAll(async () => {
  process.env['DATA_DIR'] = outbox;
  product = await startApp();
});
afterAll(async () => {
  delete process.env['DATA_DIR'];
  await product.close();
  rmSync(outbox, { recursive: true, force: true });
});

/** An office with approved reports for some addresses each. */
async function office(clients: number, addresses: number): Promise<{ who: Somebody; ids: string[] }> {
  const organizationId = await product.organization();
  for (let at = 0; at < clients; at += 1) {
    const emails = Array.from({ length: addresses }, (_, mail) => `m${at}-${mail}@example.test`);
    const client = await insertRow(product.database, 'client', { organization_id: organizationId, name: `Client ${at}`, emails });
    await aProperty(product.database, organizationId, { client_id: client.id });
  }
  const who = await product.somebody(organizationId, 'office');
  await who.send('mutation { draftReports(fromOn: "2026-06-01", untilOn: "2026-06-30") { id } }');
  await product.drain();
  const ids = (await who.send('{ waterReports { id } }')).data.waterReports.map(({ id }: { id: string }) => id);
  await who.send('mutation($ids: [ID!]!) { approveReports(ids: $ids) { id } }', { ids });
  await product.drain();
  await who.send('mutation($ids: [ID!]!) { sendReports(ids: $ids) { id } }', { ids });
  return { who, ids };
}

const mailsOf = ({ organizationId }: Somebody) =>
  product.database.admin<{ state: string; attempts: number }>(
    'select state, attempts from report_mail where organization_id = $1 order by recipient',
    [organizationId],
  );
const drain = () => drainQueue(product.database.adminUrl, product.app.get(Jobs));

it('two workers send each mail once', async () => {
  const offices = [await office(2, 2), await office(2, 2)];
  await Promise.all([drain(), drain()]);
  await drain();
  for (const { who } of offices) expect(await mailsOf(who)).toEqual(Array.from({ length: 4 }, () => ({ state: 'sent', attempts: 1 })));
});

it('what a worker had begun when it died is taken up at once: what it was sending is unknown, the rest is sent', async () => {
  const { who, ids } = await office(1, 3);
  // As the database stands when a process is killed in the middle of a mail.
  const { admin } = product.database;
  await admin(`update graphile_worker._private_jobs set locked_by = 'worker-that-died', locked_at = now(), attempts = 1`);
  await admin(`update graphile_worker._private_job_queues set locked_by = 'worker-that-died', locked_at = now()`);
  await admin(`update report_mail set state = 'sending', attempts = 1 where report_id = $1 and recipient = 'm0-0@example.test'`, [ids[0]]);
  await drain();
  expect((await mailsOf(who)).map(({ state }) => state)).toEqual(['sending', 'queued', 'queued']);
  const living = new LivingWorkers(product.database.adminUrl);
  try {
    expect(await living.freeTheDead(60)).toEqual([]);
    expect(await living.freeTheDead(0)).toEqual(['worker-that-died']);
  } finally {
    await living.end();
  }
  await drain();
  expect((await mailsOf(who)).map(({ state }) => state)).toEqual(['unknown', 'sent', 'sent']);
});

it('a worker that lives keeps its work, however long it takes', async () => {
  const [mine, others] = [new LivingWorkers(product.database.adminUrl), new LivingWorkers(product.database.adminUrl)];
  try {
    mine.events.emit('worker:create', { worker: { workerId: 'worker-that-lives' } } as never);
    await mine.freeTheDead(0);
    await office(1, 1);
    await product.database.admin(
      `update graphile_worker._private_jobs set locked_by = 'worker-that-lives', locked_at = now() - interval '3 hours'`,
    );
    expect(await mine.freeTheDead(0)).toEqual([]);
    expect(await others.freeTheDead(0)).toEqual([]);
    await mine.end();
    expect(await others.freeTheDead(0)).toEqual(['worker-that-lives']);
  } finally {
    await mine.end();
    await others.end();
  }
});

it('work under way is nobody’s to take up, by whichever name the queue keeps it', async () => {
  const organizationId = await product.organization();
  const jobs = product.app.get(Jobs);
  const others = new LivingWorkers(product.database.adminUrl);
  let [runs, freed]: [number, readonly string[]] = [0, ['never looked']];
  jobs.handle('long work', async () => {
    runs += 1;
    freed = await others.freeTheDead(0);
    return 'done';
  });
  const actor = organizationActor(organizationId, 'job');
  await inTransaction(product.app.get(DataSource), actor, (tx) => jobs.ask(tx, 'long work', {}));
  try {
    await drain();
  } finally {
    await others.end();
  }
  expect({ runs, freed }).toEqual({ runs: 1, freed: [] });
});
