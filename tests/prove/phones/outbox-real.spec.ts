import fc from 'fast-check';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { launchBrowser } from '../../support/browser.js';
import { step } from '../../web/offline/step.js';
import { harnessScript } from './bundle.js';
import { comeIn, type Person } from './door.js';
import { Line } from './line.js';
import { type Device, type Place, RealFleet } from './real-fleet.js';
import { KillableProduct } from './server.js';

// The histories of the model, against the built server, its PostgreSQL, and the phone's own code in Chromium.
const HISTORIES = Number(process.env['RILLBOOK_HISTORIES'] ?? 500);
const SEED = Number(process.env['RILLBOOK_SEED'] ?? Math.floor(Date.now() / 1000));
const STEPS = { minLength: 40, maxLength: 60 };
/** In each so-manyth history the server is killed in the middle of a delivery. */
const KILL_EVERY = 10;

let product: KillableProduct;
let browser: Browser;
let office: Person;
let devices: Device[];

beforeAll(async () => {
  const [started, launched, script] = await Promise.all([KillableProduct.start(), launchBrowser(), harnessScript()]);
  product = started;
  browser = launched;
  office = await comeIn(browser, product.url, 'theo');
  devices = [];
  // Two people of one crew.
  for (const who of ['marisol', 'ines']) devices.push(await aDevice(who, script));
});
afterAll(async () => {
  await browser?.close();
  await product?.stop();
});

async function aDevice(who: string, script: string): Promise<Device> {
  const person = await comeIn(browser, product.url, who);
  const line = new Line(person.context, () => product.kill());
  await line.lay();
  await person.context.route('**/harness', (route) =>
    route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>Phone</title><script src="/harness.js"></script>' }),
  );
  await person.context.route('**/harness.js', (route) => route.fulfill({ contentType: 'text/javascript', body: script }));
  await person.page.goto('/harness');
  return { person, line, quota: await person.context.newCDPSession(person.page) };
}

const DAY_MS = 86_400_000;
/** How far from a history's day its other stops lie. [days] */
const OTHER_DAYS = [1000, 2000];

/** Stops of its own for a history, each on a day of its own. */
async function aPlace(nth: number): Promise<Place> {
  const { properties } = await office.ask('{ properties(text: "Quail Commons") { id zones { id } } }');
  const [{ id: propertyId, zones }] = properties;
  const { me } = await devices[0]!.person.ask('{ me { crewIds } }');
  const stopOn = (days: number): Promise<string> => aStop({ propertyId, crewId: me.crewIds[0], nth: nth + days });
  const stopId = await stopOn(0);
  const otherStopIds: string[] = [];
  for (const days of OTHER_DAYS) otherStopIds.push(await stopOn(days));
  return { stopId, otherStopIds, zoneIds: zones.slice(0, 3).map((zone: { id: string }) => zone.id) };
}

interface WantedStop {
  readonly propertyId: string;
  readonly crewId: string;
  readonly nth: number;
}

async function aStop({ propertyId, crewId, nth }: WantedStop): Promise<string> {
  const day = new Date(Date.parse('2027-01-01T12:00:00Z') + nth * DAY_MS).toISOString().slice(0, 10);
  const created = await office.ask(
    'mutation($input: WorkOrderInput!) { createWorkOrder(input: $input) { ... on WorkOrder { id version } } }',
    { input: { propertyId, kind: 'inspect', what: `History ${nth}` } },
  );
  const { id, version } = created['createWorkOrder'];
  const given = await office.ask(
    'mutation($id: ID!, $version: Int!, $crewId: ID, $day: Date) { assignWorkOrder(id: $id, version: $version, crewId: $crewId, day: $day) { ... on WorkOrder { stopId } } }',
    { id, version, crewId, day },
  );
  return given['assignWorkOrder'].stopId;
}

it(`no record is lost or doubled in ${HISTORIES} histories on the real stack (seed ${SEED}), and every conflict is seen`, async () => {
  let nth = 0;
  let commands = 0;
  let operations = 0;
  let kills = 0;
  let conflicts = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(step, STEPS), async (steps) => {
      nth += 1;
      const fleet = new RealFleet(product, devices, office, await aPlace(nth), `history ${SEED} ${nth}`);
      await fleet.begin();
      const killAt = nth % KILL_EVERY === 0 ? Math.floor(steps.length / 2) : -1;
      for (const [at, one] of steps.entries()) {
        await fleet.do(one);
        if (at !== killAt) continue;
        await fleet.killDuring(nth % devices.length);
        kills += 1;
      }
      await fleet.quiet();
      await fleet.judge();
      await fleet.end();
      commands += steps.length;
      operations += fleet.operations;
      conflicts += fleet.conflicts.size;
    }),
    { numRuns: HISTORIES, seed: SEED, endOnFailure: true },
  );
  const deliveries = devices.reduce((sum, { line }) => sum + line.deliveries, 0);
  console.log(
    `told: seed ${SEED}, ${nth} histories, ${commands} commands: ${operations} records acknowledged, ${deliveries} deliveries, ${conflicts} conflicts, the server killed ${kills} times`,
  );
  // Histories in which nothing ever went wrong would prove nothing.
  expect(deliveries).toBeGreaterThan(HISTORIES * 5);
  expect(conflicts).toBeGreaterThan(HISTORIES / 20);
});
