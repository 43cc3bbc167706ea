import fc from 'fast-check';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { launchBrowser } from '../../support/browser.js';
import type { Step } from '../../web/offline/fleet.js';
import { step } from '../../web/offline/step.js';
import { harnessScript } from './bundle.js';
import { comeIn, type Person } from './door.js';
import { inLanes } from './lanes.js';
import { Line } from './line.js';
import { type Device, type Place, RealFleet } from './real-fleet.js';
import { KillableProduct } from './server.js';

// The histories of the model, against the built server, its PostgreSQL, and the phone's own code in Chromium.
const HISTORIES = Number(process.env['RILLBOOK_HISTORIES'] ?? 500);
const SEED = Number(process.env['RILLBOOK_SEED'] ?? Math.floor(Date.now() / 1000));
/** One history of the seed alone, to look at it again. */
const ONLY = Number(process.env['RILLBOOK_HISTORY'] ?? 0);
const STEPS = { minLength: 40, maxLength: 60 };
/** In each so-manyth history the server is killed in the middle of a delivery; nothing else goes on meanwhile. */
const KILL_EVERY = 10;
/** So many histories go on at once, each with phones and stops of its own. */
const LANES = 3;

let product: KillableProduct;
let browser: Browser;
let office: Person;
let lanes: Device[][];
let place: Omit<WantedStop, 'nth'> & { readonly zoneIds: readonly string[] };

beforeAll(async () => {
  const [started, launched, script] = await Promise.all([KillableProduct.start(), launchBrowser(), harnessScript()]);
  product = started;
  browser = launched;
  office = await comeIn(browser, product.url, 'theo');
  lanes = [];
  // Two people of one crew.
  for (let lane = 0; lane < LANES; lane += 1) lanes.push([await aDevice('marisol', script), await aDevice('ines', script)]);
  const { properties } = await office.ask('{ properties(text: "Quail Commons") { id zones { id } } }');
  const { me } = await lanes[0]![0]!.person.ask('{ me { crewIds } }');
  const [{ id: propertyId, zones }] = properties;
  place = { propertyId, crewId: me.crewIds[0], zoneIds: zones.slice(0, 3).map((zone: { id: string }) => zone.id) };
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
    route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>Phone</title>' }),
  );
  await person.context.addInitScript(script);
  return onNewPage({ person, line });
}

/** A page that has lived through many histories holds what they left, and grows slow. */
async function onNewPage({ person, line }: Omit<Device, 'quota'>): Promise<Device> {
  await person.page.close();
  const page = await person.context.newPage();
  await page.goto('/harness');
  return { person: { ...person, page }, line, quota: await person.context.newCDPSession(page) };
}

const DAY_MS = 86_400_000;
/** How far from a history's day its other stops lie. [days] */
const OTHER_DAYS = [1000, 2000];

/** Stops of its own for a history, each on a day of its own. */
async function aPlace(nth: number): Promise<Place> {
  const { zoneIds, ...at } = place;
  const [stopId = '', ...otherStopIds] = await Promise.all([0, ...OTHER_DAYS].map((days) => aStop({ ...at, nth: nth + days })));
  return { stopId, otherStopIds, zoneIds };
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

interface History {
  readonly nth: number;
  readonly steps: readonly Step[];
}

const told = { histories: 0, commands: 0, operations: 0, kills: 0, conflicts: 0 };

/** One history from its beginning to its judgement. */
async function happen(devices: Device[], { nth, steps }: History): Promise<void> {
  const fleet = new RealFleet(product, devices, office, await aPlace(nth), `history ${SEED} ${nth}`);
  const killAt = isKilled(nth) ? Math.floor(steps.length / 2) : -1;
  try {
    await fleet.begin();
    for (const [at, one] of steps.entries()) {
      await fleet.do(one);
      if (at !== killAt) continue;
      await fleet.killDuring(nth % devices.length);
      told.kills += 1;
    }
    await fleet.quiet();
    await fleet.judge();
    await fleet.end();
    for (const [at, device] of devices.entries()) devices[at] = await onNewPage(device);
  } catch (problem) {
    const again = `RILLBOOK_HISTORY=${nth} npm run prove -- outbox-real ${HISTORIES} ${SEED}`;
    throw new Error(`history ${nth} (alone: ${again}) failed. Its steps: ${JSON.stringify(steps)}`, { cause: problem });
  }
  told.histories += 1;
  told.commands += steps.length;
  told.operations += fleet.operations;
  told.conflicts += fleet.conflicts.size;
}

const isKilled = (nth: number): boolean => nth % KILL_EVERY === 0;

it(`no record is lost or doubled in ${HISTORIES} histories on the real stack (seed ${SEED}), and every conflict is seen`, async () => {
  const all = fc.sample(fc.array(step, STEPS), { numRuns: HISTORIES, seed: SEED }).map((steps, at): History => ({ nth: at + 1, steps }));
  const wanted = all.filter(({ nth }) => ONLY === 0 || nth === ONLY);
  for (let from = 0; from < wanted.length; from += KILL_EVERY) {
    const together = wanted.slice(from, from + KILL_EVERY);
    await inLanes(
      lanes,
      together.filter(({ nth }) => !isKilled(nth)),
      happen,
    );
    for (const one of together.filter(({ nth }) => isKilled(nth))) await happen(lanes[0]!, one);
    process.stderr.write(`${told.histories} of ${wanted.length} histories\n`);
  }
  const deliveries = lanes.flat().reduce((sum, { line }) => sum + line.deliveries, 0);
  console.log(
    `told: seed ${SEED}, ${told.histories} histories, ${told.commands} commands: ${told.operations} records acknowledged, ${deliveries} deliveries, ${told.conflicts} conflicts, the server killed ${told.kills} times`,
  );
  expect(told.histories).toBe(wanted.length);
  // Histories in which nothing ever went wrong would prove nothing.
  expect(deliveries).toBeGreaterThan(wanted.length * 5);
  expect(told.conflicts).toBeGreaterThan(wanted.length / 20);
});
