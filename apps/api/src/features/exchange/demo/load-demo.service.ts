import { randomUUID } from 'node:crypto';
import path from 'node:path';
import type { INestApplicationContext } from '@nestjs/common';
import { organizationActor } from '../../../platform/database/actor.js';
import type { DatabaseAddress } from '../../../platform/database/database-url.js';
import { organizations } from '../../../platform/identity/organizations/organization.repository.js';
import { Jobs } from '../../../platform/jobs/jobs.js';
import { settleQueue } from '../../../platform/jobs/settle-queue.js';
import { folderFiles } from '../files/folder-files.js';
import { ExchangeTransactions } from '../import/directory/transactions.repository.js';
import { ImportDeed } from '../import/import-deed.service.js';
import { problemSentence } from '../problems/problem-sentence.js';
import { DEMO_FOLDER, type DemoCompany, demoCompanies } from './demo-world.js';
import { demo } from './demo.repository.js';
import { finishWork } from './finish-work.service.js';
import { giveOutWork } from './give-out-work.service.js';
import { admitPeople } from './people-of-demo.service.js';
import { DEMO_DAY } from './work-of-demo.js';

type Say = (line: string) => void;

/**
 * Loads the demonstration into a server that has no organization and never had one, through the product's own import: two companies
 * with their people and crews, their accounts and findings, work that was finished with its pictures, and some given out. RILLBOOK_DEMO=no leaves the server empty.
 *
 * @returns whether it was loaded
 */
export async function loadDemo(
  app: INestApplicationContext,
  database: Pick<DatabaseAddress, 'adminUrl'>,
  say: Say = console.log,
): Promise<boolean> {
  const transactions = app.get(ExchangeTransactions);
  if (process.env['RILLBOOK_DEMO'] === 'no' || !(await transactions.isServerNew())) return false;
  const begun = Date.now();
  say('This server is empty: loading the demonstration (RILLBOOK_DEMO=no starts without it).');
  for (const company of await demoCompanies()) await loadCompany(app, database, company, say);
  say(`The demonstration was loaded in ${((Date.now() - begun) / 1000).toFixed(0)} s.`);
  return true;
}

async function loadCompany(
  app: INestApplicationContext,
  database: Pick<DatabaseAddress, 'adminUrl'>,
  company: DemoCompany,
  say: Say,
): Promise<void> {
  const organizationId = randomUUID();
  const rows = await importCompany(app, organizationId, company);
  say(`  ${company.organization}: ${rows.toLocaleString('en-US')} rows imported; computing its accounts …`);
  const transactions = app.get(ExchangeTransactions);
  const queue = { source: transactions.source, adminUrl: database.adminUrl, jobs: app.get(Jobs) };
  for (const { says, isDone } of await settleQueue(queue, organizationId)) if (!isDone) say(`  ${company.organization}: ${says}`);
  const office = await transactions.within(organizationActor(organizationId, 'job'), (tx) => demo.office(tx));
  await transactions.within(office, (tx) => finishWork(app, tx, company.finished));
  const inWork = await transactions.within(office, (tx) => giveOutWork(app, tx, company.folder));
  say(`  ${company.organization}: accounts and findings are there${inWork ? `, ${inWork} findings in work` : ''}.`);
}

/** The organization, its rows, its people: all of it or nothing. */
async function importCompany(app: INestApplicationContext, organizationId: string, company: DemoCompany): Promise<number> {
  const files = await folderFiles(path.join(DEMO_FOLDER, company.folder));
  const report = await app.get(ImportDeed).run(organizationActor(organizationId, 'import'), files, {
    rows: 'all',
    async begin(tx) {
      await organizations.add(tx, company.organization);
      await demo.standStill(tx, company.units, DEMO_DAY);
    },
    finish: (tx) => admitPeople(app, tx, company),
  });
  const first = report.files.flatMap(({ problems }) => problems)[0];
  if (first) throw new TypeError(`the demonstration's folder ${company.folder} cannot be imported: ${problemSentence(first, 'en')}`);
  return report.rows;
}
