import { parseArgs } from 'node:util';
import { RECOMPUTE } from '../features/accounts/recompute/recompute.job.js';
import { inTransaction } from '../platform/database/organization-transaction.js';
import { organizationActor } from '../platform/database/actor.js';
import { Jobs } from '../platform/jobs/jobs.js';
import { type Command, type ExitCode, UsageProblem } from './command.js';
import { organizationNamed } from './organization-named.js';
import { organizationNames } from './organization-names.js';
import { type OpenProduct, withProduct } from './open-product.js';
import { ProgressLine } from './progress-line.js';
import { settleQueue } from '../platform/jobs/settle-queue.js';

/** Brings the month accounts and findings of one organization, or of all, up to date. */
export const recompute: Command = {
  name: 'recompute',
  summary: 'Computes the accounts and findings of an organization, or of all.',
  usage: '[--organization NAME]',
  async run(words) {
    const { values } = parseArgs({ args: [...words], options: { organization: { type: 'string' } } });
    return withProduct<ExitCode>(async (product) => {
      const names = values.organization === undefined ? await organizationNames(product.database.adminUrl) : [values.organization];
      let good = true;
      for (const name of names) good = (await recomputeOf(product, name)) && good;
      return good ? 0 : 1;
    });
  },
};

async function recomputeOf({ app, source, database }: OpenProduct, name: string): Promise<boolean> {
  const found = await organizationNamed(database.adminUrl, name, { make: false });
  if (!found) throw new UsageProblem(`There is no organization "${name}".`);
  const jobs = app.get(Jobs);
  await inTransaction(source, organizationActor(found.id, 'job'), (tx) => jobs.ask(tx, RECOMPUTE, {}));
  const line = new ProgressLine();
  const ended = await settleQueue({ source, adminUrl: database.adminUrl, jobs }, found.id, ({ done, total }) => {
    line.show(`${name}: ${done} of ${total} properties`);
  });
  line.end();
  for (const { says } of ended) console.log(`${name}, ${says}`);
  return ended.every(({ isDone }) => isDone);
}
