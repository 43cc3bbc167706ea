import { afterAll, beforeAll, expect, it } from 'vitest';
import { inTransaction, OrganizationTransaction } from '../../../apps/api/src/platform/database/organization-transaction.js';
import { organizationActor } from '../../../apps/api/src/platform/database/actor.js';
import { OrganizationItself } from '../../../apps/api/src/platform/identity/organizations/organization.entity.js';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';

// A transaction that rests holds no connection; its next statement begins anew, as the same organization.

let product: TestApp;
let owner: Somebody;

beforeAll(async () => {
  product = await startApp();
  owner = await product.somebody(await product.organization(), 'owner');
});
afterAll(() => product.close());

const within = <T>(work: (tx: OrganizationTransaction) => Promise<T>): Promise<T> =>
  inTransaction(product.source, organizationActor(owner.organizationId, 'import'), work);
/** What the database says of the connection that a transaction has now. */
const connectionOf = async (tx: OrganizationTransaction) => {
  const [{ pid }] = (await tx.query<{ pid: number }>('select pg_backend_pid() as pid')) as [{ pid: number }];
  return async () =>
    (await product.database.admin<{ state: string }>('select state from pg_stat_activity where pid = $1', [pid]))[0]?.state ?? 'gone';
};
const nameOf = async (tx: OrganizationTransaction) => (await tx.query<{ name: string }>('select name from organization'))[0]?.name;
const SPEND = 'update organization set least_litres = $1';
const spent = async () =>
  (
    await product.database.admin<{ litres: number }>('select least_litres as litres from organization where id = $1', [
      owner.organizationId,
    ])
  )[0]!.litres;

it('holds no connection while it rests, and sees afterwards what others kept, and only its own organization', async () => {
  await within(async (tx) => {
    const name = await nameOf(tx);
    const table = tx.of(OrganizationItself);
    const state = await connectionOf(tx);
    expect(await state()).toBe('idle in transaction');
    expect(await tx.rest()).toBe(true);
    expect(await state()).toBe('idle');
    await product.database.admin('update organization set name = $2 where id = $1', [owner.organizationId, `${name} again`]);
    // A repository that was taken before is as good as a new one.
    expect((await table.find()).map((row) => row.name)).toEqual([`${name} again`]);
    expect(await (await connectionOf(tx))()).toBe('idle in transaction');
  });
});

it('keeps what is written after a rest, undoes it when it fails, and ends where nothing follows', async () => {
  await within(async (tx) => {
    await nameOf(tx);
    await tx.rest();
    await tx.query(SPEND, [321]);
  });
  expect(await spent()).toBe(321);
  const failed = within(async (tx) => {
    await nameOf(tx);
    await tx.rest();
    await tx.query(SPEND, [1]);
    throw new TypeError('no');
  });
  await expect(failed).rejects.toThrow('no');
  expect(await spent()).toBe(321);
  await within(async (tx) => {
    expect(await tx.rest()).toBe(true);
    expect(await tx.rest()).toBe(true);
  });
});

it('does not rest on what it has written or locked, nor within an attempt: one fate', async () => {
  await within(async (tx) => {
    await tx.query(SPEND, [99]);
    expect(await tx.rest()).toBe(false);
    expect(await (await connectionOf(tx))()).toBe('idle in transaction');
    await tx.query(SPEND, [100]);
  });
  expect(await spent()).toBe(100);
  await within(async (tx) => {
    await tx.query('select id from organization for update');
    expect(await tx.rest()).toBe(false);
  });
  await within(async (tx) => {
    await tx.query('select pg_advisory_xact_lock(41)');
    expect(await tx.rest()).toBe(false);
  });
  await within(async (tx) => expect(await tx.attempt(() => tx.rest())).toBe(false));
});

it('waits its turn behind statements that are under way', async () => {
  await within(async (tx) => {
    const [slow, rested, after] = await Promise.all([tx.query('select pg_sleep(0.05)'), tx.rest(), nameOf(tx)]);
    expect(slow).toHaveLength(1);
    expect(rested).toBe(true);
    expect(after).toBeDefined();
  });
});

it('refuses a statement after its end', async () => {
  const tx = await OrganizationTransaction.open(product.source, organizationActor(owner.organizationId, 'import'));
  await tx.commit();
  await expect(tx.query('select 1')).rejects.toThrow('after the end');
  await tx.rollback();
});
