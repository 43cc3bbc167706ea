import path from 'node:path';
import sharp from 'sharp';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { launchBrowser } from '../support/browser.js';
import { type Product, startProduct } from './product.js';
import { companyInJune, julysRecords, NEEDED_GAL_PER_DAY, PROGRAMMED_BEFORE_GAL_PER_DAY } from './world.js';

// The main job, once, in a browser: a company's folder comes in, the account says what is wrong, the office gives the
// work out, the crew lead does it on a phone, and the account of July shows that it helped.
const COMPANY = 'Plover Landscape';
const PASSWORD = 'dry grass and slow rain';
const LITRES_PER_GALLON = 3.785411784;

let product: Product;
let browser: Browser;
let office: Page;
let phone: Page;
const contexts: BrowserContext[] = [];

async function person(viewport: { width: number; height: number }, invitation: string): Promise<Page> {
  const context = await browser.newContext({ viewport, baseURL: product.url, locale: 'en-US' });
  contexts.push(context);
  const page = await context.newPage();
  page.setDefaultTimeout(30_000);
  await page.goto(invitation);
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
  await page.getByRole('button', { name: 'Accept and sign in' }).click();
  return page;
}

/** Asks the product as the person of a page, for what has no page of its own in this journey. */
async function ask(page: Page, query: string, variables: Record<string, unknown> = {}): Promise<Record<string, any>> {
  const body = await page.evaluate(
    async (sent) =>
      (await fetch('/graphql', { method: 'POST', headers: { 'content-type': 'application/json' }, body: sent })).json() as Promise<{
        data: Record<string, unknown>;
        errors?: unknown;
      }>,
    JSON.stringify({ query, variables }),
  );
  expect(body.errors).toBeUndefined();
  return body.data;
}

const standsStillOn = (day: string) => product.sql('update organization set stands_still_on = $1 where name = $2', [day, COMPANY]);

/** The organization's calendar is moved, as the days that pass between two months would. */
async function itIs(day: string): Promise<void> {
  await standsStillOn(day);
  product.command('recompute', '--organization', COMPANY);
}

const account = async (month: string) =>
  (
    await ask(
      office,
      'query($month: Month!) { properties { account(month: $month) { needed { litres } programmed { litres } metered { litres } settingsGap { litres within } } } }',
      { month },
    )
  )['properties'][0].account;

beforeAll(async () => {
  [product, browser] = await Promise.all([startProduct({ demo: false }), launchBrowser()]);
});
afterAll(async () => {
  await Promise.all(contexts.map((context) => context.close()));
  await browser?.close();
  await product?.stop();
});

it('an owner comes in by invitation and imports a folder', async () => {
  const invited = product.command(
    'invite',
    '--organization',
    COMPANY,
    '--email',
    'pat@example.test',
    '--name',
    'Pat Marsh',
    '--role',
    'owner',
  );
  const link = /\/invitation\/\S+/.exec(invited)?.[0];
  expect(link).toBeDefined();
  // Before the import, whose own accounts would otherwise be judged by the day on which this test runs.
  await standsStillOn('2026-06-02');
  office = await person({ width: 1280, height: 900 }, link!);
  await office.getByRole('link', { name: 'Setup' }).click();
  await office.goto('/setup/import');
  await office
    .locator('input[type=file]')
    .first()
    .setInputFiles(companyInJune(path.join(product.folder, 'june')));
  await office.getByRole('button', { name: 'Import all rows' }).click();
  await office
    .locator('main')
    .getByRole('link', { name: /portfolio/i })
    .waitFor();
  await itIs('2026-06-02');
});

it('the portfolio says which property is over, and why', async () => {
  await office.goto('/');
  const row = office.getByRole('row', { name: /Plover Green/ });
  await row.waitFor();
  expect(await row.textContent()).toMatch(/more than the plants need/);
  const may = await account('2026-05');
  expect(may.programmed.litres / LITRES_PER_GALLON).toBeCloseTo(31 * PROGRAMMED_BEFORE_GAL_PER_DAY, 3);
  expect(may.metered.litres / LITRES_PER_GALLON).toBeCloseTo(31 * PROGRAMMED_BEFORE_GAL_PER_DAY, 0);
  // 0.6233 is the trade's rounding of gallons in an inch on a square foot; the product has the exact factor.
  expect(may.needed.litres / LITRES_PER_GALLON / (31 * NEEDED_GAL_PER_DAY)).toBeCloseTo(1, 3);
  expect(may.settingsGap.within).toBe(false);
});

it('the office accepts the finding and gives the work to a crew', async () => {
  const { createCrew } = await ask(office, 'mutation { createCrew(input: { name: "Crew 1" }) { ... on Crew { id } } }');
  const { inviteMember } = await ask(
    office,
    'mutation { inviteMember(email: "sam@example.test", name: "Sam Reed", role: crewLead) { link } }',
  );
  phone = await person({ width: 390, height: 844 }, inviteMember.link);
  await phone.waitForURL(/today/);
  const { me } = await ask(phone, '{ me { memberId } }');
  const { crews } = await ask(office, '{ crews { id version } }');
  await ask(
    office,
    'mutation($id: ID!, $version: Int!, $memberId: ID!) { changeCrew(id: $id, version: $version, input: { name: "Crew 1", memberIds: [$memberId] }) { __typename } }',
    { id: createCrew.id, version: crews[0].version, memberId: me.memberId },
  );

  await office.goto('/findings');
  await office.getByRole('button', { name: /Accept, make a work order/ }).click();
  const dialog = office.getByRole('dialog');
  await dialog.getByLabel('Crew').selectOption({ label: 'Crew 1' });
  await dialog.getByLabel('Day').fill('2026-06-02');
  await dialog.getByRole('button', { name: 'Make the work order' }).click();
  await office.getByText(/Work order made: .*Crew 1/).waitFor();
  const { workOrders } = await ask(
    office,
    '{ workOrders { kind state day crew { name } plannedSettings { programs { adjustPercent } } } }',
  );
  expect(workOrders).toMatchObject([{ kind: 'adjust', state: 'given out', day: '2026-06-02', crew: { name: 'Crew 1' } }]);
  expect(workOrders[0].plannedSettings.programs[0].adjustPercent).toBe(61);
});

it('the crew lead works the stop on a phone without signal, and it all arrives when there is signal again', async () => {
  await phone.goto('/today');
  await phone.getByText('Ready without signal.').waitFor();
  await phone.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  const stop = await phone.getByRole('link', { name: /Plover Green/ }).getAttribute('href');
  await phone.context().setOffline(true);
  // A page that was never opened, opened cold.
  await phone.goto(`${stop}?step=settings`);
  await phone.getByText('61').first().waitFor();
  await phone.getByRole('button', { name: 'Set as planned' }).click();
  await phone.getByText(/Kept at/).waitFor();
  await phone
    .getByRole('link', { name: 'Done' })
    .or(phone.getByRole('button', { name: 'Done' }))
    .first()
    .click();
  await phone.locator('main').getByRole('button', { name: 'Done', exact: true }).click();
  const buffer = await sharp({ create: { width: 2400, height: 1800, channels: 3, background: 'green' } })
    .jpeg()
    .toBuffer();
  await phone.locator('input[type=file]').setInputFiles({ name: 'after.jpg', mimeType: 'image/jpeg', buffer });
  await phone.getByRole('button', { name: '1 photo' }).waitFor();
  await phone.getByRole('button', { name: 'Close the stop' }).click();
  await phone.getByRole('heading', { name: /^Closed at/ }).waitFor();
  await phone.reload();
  await phone.getByRole('heading', { name: /^Closed at/ }).waitFor();
  await phone.getByText(/On this phone: 5 records, one photo/).waitFor();
  expect((await ask(office, '{ workOrders { state } }'))['workOrders']).toEqual([{ state: 'given out' }]);

  await phone.context().setOffline(false);
  // Told by the phone itself, whatever it sends after: nothing of this day waits on it any more.
  await phone.goto('/today/phone');
  await phone.getByRole('heading', { name: 'Nothing waits' }).waitFor({ timeout: 90_000 });
  await phone.getByText(/photos? waits?/).waitFor({ state: 'detached', timeout: 90_000 });
  const { workOrders } = await ask(office, '{ workOrders { state doneAt } }');
  expect(workOrders[0].state).toBe('done');
  const { findings } = await ask(office, '{ findings(state: ["resolved"]) { kind } }');
  expect(findings).toEqual([{ kind: 'over-programmed' }]);
  const { properties } = await ask(office, '{ properties { visits { closedAt photos { kind arrivedAt width workOrderId } } } }');
  const visits = properties.flatMap((property: { visits: unknown[] }) => property.visits);
  expect(visits).toMatchObject([{ photos: [{ kind: 'after', width: 1600, workOrderId: expect.any(String) }] }]);
  expect(visits[0].closedAt).not.toBeNull();
  expect(visits[0].photos[0].arrivedAt).not.toBeNull();
  const { devices } = await ask(office, '{ devices { person waiting photosWaiting refused } }');
  expect(devices).toMatchObject([{ person: 'Sam Reed', waiting: 0, refused: 0 }]);
});

it('nobody is let in again on a phone that was signed out of without signal, and the server is told when there is signal', async () => {
  const owed = () => phone.evaluate(() => localStorage.getItem('rillbook.signOutOwed'));
  const stores = async () => (await phone.evaluate(() => indexedDB.databases())).length;
  await phone.goto('/today/phone');
  await phone.getByRole('heading', { name: 'Nothing waits' }).waitFor();
  const before = await stores();
  await phone.context().setOffline(true);
  await phone.getByRole('button', { name: 'Sign out' }).click();
  await phone.waitForURL(/sign-in/);
  await phone.goto('/today');
  await phone.waitForURL(/sign-in/);
  expect(await owed()).toBe('yes');
  expect(await stores()).toBe(before - 1);
  await phone.context().setOffline(false);
  await expect.poll(owed, { timeout: 30_000 }).toBeNull();
  await phone.goto('/today');
  await phone.waitForURL(/sign-in/);
});

it("July's account shows that it helped", async () => {
  julysRecords(path.join(product.folder, 'july'), 61);
  product.command('import', path.join(product.folder, 'july'), '--organization', COMPANY);
  await itIs('2026-08-02');
  const [may, july] = [await account('2026-05'), await account('2026-07')];
  expect(july.settingsGap.within).toBe(true);
  expect(Math.abs(july.settingsGap.litres)).toBeLessThan(0.05 * may.settingsGap.litres);
  expect(july.metered.litres / LITRES_PER_GALLON).toBeCloseTo(31 * 0.61 * PROGRAMMED_BEFORE_GAL_PER_DAY, -1);
  await office.goto('/?month=2026-07');
  await office
    .getByText(/within what can be measured/i)
    .first()
    .waitFor();
  const { findings } = await ask(office, '{ findings(state: ["open", "in work"]) { kind } }');
  expect(findings).toEqual([]);
});
