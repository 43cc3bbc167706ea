import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import { launchBrowser, launchLasting } from '../../support/browser.js';
import { giveWork, type StopToWork, workStop } from './day.js';
import { comeIn, type Person } from './door.js';
import { KillableProduct } from './server.js';

// A whole day without signal: the packet is on the phone, the network is cut, the server is gone, the browser is started again, twelve stops are
// worked with thirty photos, and the network comes back at 64 kbit/s with cuts.
const STOPS = Number(process.env['RILLBOOK_STOPS'] ?? 12);
const PHOTOS = Number(process.env['RILLBOOK_PHOTOS'] ?? 30);
const COLD_STARTS = Number(process.env['RILLBOOK_COLD_STARTS'] ?? 5);
const SLOW = 4;
const BYTES_PER_S = 64_000 / 8;
const LATENCY_MS = 300;
const CONTACT_MS = 20_000;
const CUT_MS = 10_000;
const MOST_MS = 30 * 60_000;
const CREW_LEAD = 'dell';
/** What is promised: a deep link opened cold, the middle of several, and Save. [ms] */
const COLD_MS = 2000;
const SAVE_MS = 100;

let product: KillableProduct;
let browser: Browser;
let office: Person;
let folder: string;
let phone: BrowserContext;

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'rillbook-phone-'));
  [product, browser] = await Promise.all([KillableProduct.start(), launchBrowser()]);
  office = await comeIn(browser, product.url, 'theo');
});
afterAll(async () => {
  await phone?.close();
  await browser?.close();
  await product?.stop();
  rmSync(folder, { recursive: true, force: true });
});

const openPhone = () =>
  launchLasting(folder, { baseURL: product.url, viewport: { width: 390, height: 844 }, locale: 'en-US', serviceWorkers: 'allow' });

it('a day without signal arrives once, over a bad line', async () => {
  const stops = await prepare();
  const cold = await coldStarts(stops);
  const saves = await work(stops);
  const line = await comeBack();
  await arrivedOnce(stops);
  console.log(
    `told: ${STOPS} stops and ${PHOTOS} photos (${line.photoBytes} bytes) without signal; a deep link opened cold at ${SLOW}x throttle in ${cold.drawn.map(Math.round).join(', ')} ms (seen after ${cold.seen.map(Math.round).join(', ')}); Save in ${Math.round(middle(saves))} ms (most ${Math.round(Math.max(...saves))}); all text ${(line.textMs / 1000).toFixed(1)} s after first contact at 64 kbit/s, everything after ${(line.allMs / 1000).toFixed(0)} s with ${line.cuts} cuts; once each`,
  );
  expect(line.textMs).toBeLessThan(60_000);
  expect(middle(cold.seen)).toBeLessThan(COLD_MS);
  expect(middle(saves)).toBeLessThan(SAVE_MS);
});

const middle = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

/** The packet comes onto the phone; then there is no network and no server, and the browser is started again. */
async function prepare(): Promise<StopToWork[]> {
  const lead = await comeIn(browser, product.url, CREW_LEAD);
  const { me } = await lead.ask('{ me { crewIds } }');
  const stops = await giveWork(office, me.crewIds[0], STOPS);
  const cookies = await lead.context.cookies();
  phone = await openPhone();
  await phone.addCookies(cookies.map((cookie) => ({ ...cookie, expires: Date.now() / 1000 + 86_400 })));
  const page = await onlyPage();
  await page.goto('/today');
  await page.getByText('Ready without signal.').waitFor({ timeout: 60_000 });
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await product.kill();
  return stops;
}

const onlyPage = async (): Promise<Page> => phone.pages()[0] ?? (await phone.newPage());

interface ColdStarts {
  /** from the beginning of the navigation to the frame after the stop's heading is there, by the page's own clock [ms] */
  readonly drawn: readonly number[];
  /** the same by this process's clock, with what its tools do in the page at a quarter of its speed [ms] */
  readonly seen: readonly number[];
}

/** Writes down in the page when its heading was drawn. */
function noteWhenDrawn(): void {
  new MutationObserver((_, observer) => {
    if (!document.querySelector('main h1')) return;
    observer.disconnect();
    requestAnimationFrame(() => setTimeout(() => performance.mark('drawn')));
  }).observe(document, { subtree: true, childList: true });
}

/** Each time the browser is a new process, and the page one that it has never opened. */
async function coldStarts(stops: readonly StopToWork[]): Promise<ColdStarts> {
  const drawn: number[] = [];
  const seen: number[] = [];
  for (let start = 0; start < COLD_STARTS; start += 1) {
    await phone.close();
    phone = await openPhone();
    await phone.setOffline(true);
    const page = await onlyPage();
    await page.addInitScript(noteWhenDrawn);
    const tools = await phone.newCDPSession(page);
    await tools.send('Emulation.setCPUThrottlingRate', { rate: SLOW });
    const begun = performance.now();
    await page.goto(`/today/${stops[start]!.id}?step=settings`, { waitUntil: 'commit' });
    await page.locator('main h1').waitFor();
    seen.push(performance.now() - begun);
    await tools.send('Emulation.setCPUThrottlingRate', { rate: 1 });
    drawn.push((await page.waitForFunction(() => performance.getEntriesByName('drawn')[0]?.startTime).then((at) => at.jsonValue()))!);
  }
  return { drawn, seen };
}

async function work(stops: readonly StopToWork[]): Promise<number[]> {
  const page = await onlyPage();
  const saves: number[] = [];
  for (const [at, stop] of stops.entries())
    saves.push(await workStop(page, stop, Math.floor(PHOTOS / STOPS) + (at < PHOTOS % STOPS ? 1 : 0)));
  await page.goto('/today/phone');
  await page.getByText(`${PHOTOS} photos wait`, { exact: false }).waitFor();
  return saves;
}

interface CameBack {
  readonly textMs: number;
  readonly allMs: number;
  readonly cuts: number;
  readonly photoBytes: number;
}

/** The server is there again, the line is slow and cut again and again, until everything has arrived. */
async function comeBack(): Promise<CameBack> {
  const page = await onlyPage();
  await page.goto('/today/phone');
  const tools = await phone.newCDPSession(page);
  const conditions = { latency: LATENCY_MS, downloadThroughput: BYTES_PER_S, uploadThroughput: BYTES_PER_S };
  await tools.send('Network.enable');
  await product.begin();
  await tools.send('Network.emulateNetworkConditions', { ...conditions, offline: false });
  await phone.setOffline(false);
  await tools.send('Network.emulateNetworkConditions', { ...conditions, offline: false });
  const begun = Date.now();
  let textMs: number | null = null;
  let cuts = 0;
  let nextCut = begun + CONTACT_MS;
  for (;;) {
    const now = Date.now();
    if (now - begun > MOST_MS) throw new Error('Not everything arrived.');
    const { text, photos, bytes } = await arrived();
    if (text && textMs === null) textMs = now - begun;
    if (text && photos === PHOTOS) return { textMs: textMs ?? now - begun, allMs: now - begun, cuts, photoBytes: bytes };
    if (now > nextCut) {
      cuts += 1;
      await tools.send('Network.emulateNetworkConditions', { ...conditions, offline: true });
      await new Promise((resolve) => setTimeout(resolve, CUT_MS));
      await tools.send('Network.emulateNetworkConditions', { ...conditions, offline: false });
      nextCut = Date.now() + CONTACT_MS;
    }
    await new Promise((resolve) => setTimeout(resolve, 250));
  }
}

async function arrived(): Promise<{ text: boolean; photos: number; bytes: number }> {
  const [row] = await product.sql<{ closed: number; told: number; photos: number; bytes: number }>(
    `select (select count(*)::int from field_operation where kind = 'close-visit') as closed, (select count(*)::int from photo where visit_id in (select id from field_operation where kind = 'arrive')) as told, (select count(*)::int from photo where arrived_at is not null and visit_id in (select id from field_operation where kind = 'arrive')) as photos, (select coalesce(sum(file_bytes), 0)::int from photo) as bytes`,
  );
  return { text: row!.closed === STOPS && row!.told === PHOTOS, photos: row!.photos, bytes: row!.bytes };
}

/** Counted in the database, and told on the phone. */
async function arrivedOnce(stops: readonly StopToWork[]): Promise<void> {
  const ids = stops.map(({ id }) => id);
  const [row] = await product.sql<Record<string, number>>(
    `select (select count(*)::int from visit where stop_id = any($1) and closed_at is not null) as visits, (select count(*)::int from visit where stop_id = any($1)) as arrivals, (select count(*)::int from zone_note where visit_id in (select id from visit where stop_id = any($1))) as notes, (select count(*)::int from work_order where stop_id = any($1) and what = 'Walk the zones' and state = 'done') as orders, (select count(*)::int from field_operation where kind = 'reading') as sent, (select count(*)::int from reading where id in (select id from field_operation where kind = 'reading')) as readings, (select count(*)::int from field_operation where verdict <> 'applied') as others, (select count(*)::int from finding where kind = 'seen on site') as findings`,
    [ids],
  );
  expect(row).toEqual({
    visits: STOPS,
    arrivals: STOPS,
    notes: STOPS,
    orders: STOPS,
    sent: STOPS,
    readings: STOPS,
    others: 0,
    findings: STOPS,
  });
  const page = await onlyPage();
  await page.getByText('Nothing waits').waitFor({ timeout: 60_000 });
  // The phone says so by itself once the last picture has gone.
  const asked = '{ devices { waiting photosWaiting refused } }';
  await vi.waitFor(async () => expect((await office.ask(asked))['devices']).toEqual([{ waiting: 0, photosWaiting: 0, refused: 0 }]), {
    timeout: 60_000,
    interval: 500,
  });
}
