import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchBrowser } from '../support/browser.js';
import { pdfPages } from '../support/pdf-text.mjs';
import { type Product, startProduct } from './product.js';

// Every page of the demonstration, as the person who opens it: nothing on the console, nothing wider than the screen, and no
// breach of WCAG 2.2 AA that axe-core can see.
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const DESK = { width: 1280, height: 900 };
const PHONE = { width: 390, height: 844 };
const LEAST_FIELD_TARGET = 48;
const LEAST_FIELD_TEXT = 18;
const NARROW = { width: 320, height: 700 };

let product: Product;
let browser: Browser;
const entered = new Map<string, Awaited<ReturnType<BrowserContext['storageState']>>>();

async function ask(page: Page, query: string): Promise<Record<string, any>> {
  return page.evaluate(async (sent) => {
    const answer = await fetch('/graphql', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ query: sent }),
    });
    return ((await answer.json()) as { data: Record<string, unknown> }).data;
  }, query);
}

/** A page signed in by the demonstration's own door. */
async function as(role: string, viewport: { width: number; height: number }, colorScheme: 'light' | 'dark' = 'light'): Promise<Page> {
  const state = entered.get(role);
  const context = await browser.newContext({
    viewport,
    colorScheme,
    baseURL: product.url,
    locale: 'en-US',
    ...(state && { storageState: state }),
  });
  const page = await context.newPage();
  page.setDefaultTimeout(30_000);
  if (state) return page;
  await page.goto('/sign-in');
  await page
    .getByRole('button', { name: `Enter as ${role} of Larkspur Grounds` })
    .first()
    .click();
  await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'));
  entered.set(role, await context.storageState());
  return page;
}

/** Opens a page, waits until it has what it asked for, and says what is wrong with it. */
async function faults(page: Page, address: string): Promise<string[]> {
  const said: string[] = [];
  const listen = (message: { type(): string; text(): string }): void => {
    if (message.type() === 'error') said.push(`console: ${message.text()}`);
  };
  page.on('console', listen);
  page.on('pageerror', (problem) => said.push(`thrown: ${problem.message}`));
  await page.goto(address, { waitUntil: 'networkidle' });
  await page.locator('h1').first().waitFor();
  const wider = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  if (wider > 0) said.push(`${wider} px wider than the screen`);
  // Evaluated, not added as a script: the policy of the pages allows no script but their own.
  await page.evaluate(AXE);
  const violations = await page.evaluate(async (tags) => {
    const { axe } = window as unknown as {
      axe: { run(where: Document, how: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
    };
    return (await axe.run(document, { runOnly: { type: 'tag', values: tags } })).violations.map(
      ({ id, nodes }) =>
        `${id}: ${nodes
          .map(({ html }) => html.slice(0, 120))
          .slice(0, 3)
          .join(' | ')}`,
    );
  }, TAGS);
  page.off('console', listen);
  return [...said, ...violations];
}

/** What sun and gloves ask of the page that is open: contrast of 7:1, nothing to hit smaller than 48 px, nothing to read smaller than 18 px. */
async function faultsForGloves(page: Page): Promise<string[]> {
  const limits = { least: LEAST_FIELD_TARGET, leastText: LEAST_FIELD_TEXT };
  return page.evaluate(async ({ least, leastText }) => {
    type Checked = { violations: { nodes: { html: string }[] }[] };
    const { axe } = window as unknown as { axe: { run(where: Document, how: object): Promise<Checked> } };
    const { violations } = await axe.run(document, { runOnly: { type: 'rule', values: ['color-contrast-enhanced'] } });
    const pale = violations.flatMap(({ nodes }) => nodes.map(({ html }) => `below 7:1: ${html.slice(0, 120)}`));
    const small = [...document.querySelectorAll('a, button, input:not([hidden]), select, textarea')].flatMap((thing) => {
      // A tick is hit by its whole line.
      const target = thing.matches('[type=checkbox], [type=radio]') ? (thing.closest('label') ?? thing) : thing;
      const { width, height } = target.getBoundingClientRect();
      const isSeen = width > 1 && height > 1;
      return isSeen && (width < least || height < least)
        ? [`${Math.round(width)} x ${Math.round(height)} px: ${target.outerHTML.slice(0, 120)}`]
        : [];
    });
    const fine = [...document.querySelectorAll<HTMLElement>('main *')].flatMap((thing) => {
      const isRead = [...thing.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim());
      const size = Number.parseFloat(getComputedStyle(thing).fontSize);
      return isRead && thing.offsetWidth > 1 && size < leastText ? [`${size} px: ${thing.outerHTML.slice(0, 120)}`] : [];
    });
    return [...pale, ...small, ...fine];
  }, limits);
}

/** What longer words can break of a page that is without fault in English. */
async function faultsInSpanish(page: Page, address: string): Promise<string[]> {
  await page.goto(address);
  await page.locator('html[lang=es] h1').first().waitFor();
  await page.evaluate(AXE);
  const wider = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  return [...(wider > 0 ? [`${wider} px wider than the screen`] : []), ...(await faultsForGloves(page))];
}

beforeAll(async () => {
  [product, browser] = await Promise.all([startProduct({ demo: true }), launchBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await product?.stop();
});

const DESK_PAGES = [
  '/',
  '/month',
  '/findings',
  '/routes',
  '/routes/month',
  '/routes/phones',
  '/routes/sheet',
  '/rain',
  '/findings/week',
  '/reports',
  '/reports/company',
  '/setup/reports',
  '/setup',
  '/setup/properties',
  '/setup/clients',
  '/setup/people',
  '/setup/organization',
];

// Side by side: much of a page's time is waiting for it to be quiet.
describe.concurrent('the pages of the office', () => {
  for (const [name, viewport, colorScheme] of [
    ['desk, light', DESK, 'light'],
    ['desk, dark', DESK, 'dark'],
    ['narrow', NARROW, 'light'],
  ] as const)
    it(`are without fault: ${name}`, async () => {
      const page = await as('owner', viewport, colorScheme);
      await page.goto('/');
      const { properties } = await ask(page, '{ properties(text: "Quail Commons") { id } }');
      const found: Record<string, string[]> = {};
      for (const address of [...DESK_PAGES, `/properties/${properties[0].id}`]) {
        const wrong = await faults(page, address);
        if (wrong.length) found[address] = wrong;
      }
      await page.context().close();
      expect(found).toEqual({});
    });
});

it('the pages of the phone are without fault, in English and in Spanish', async () => {
  const page = await as('crew lead', PHONE);
  await page.goto('/today');
  const { today } = await ask(page, '{ today { stops { id property { zones { id } } } } }');
  type StopOfDay = { id: string; property: { zones: { id: string }[] } };
  const stop = today.flatMap((route: { stops: StopOfDay[] }) => route.stops)[0] as StopOfDay;
  const steps = ['', '?step=meter', '?step=settings', '?step=zones', '?step=tests', `?step=tests&thing=${stop.property.zones[0]!.id}`];
  const found: Record<string, string[]> = {};
  const addresses = ['/today', '/today/phone', ...[...steps, '?step=done'].map((step) => `/today/${stop.id}${step}`)];
  for (const address of addresses) {
    const wrong = [...(await faults(page, address)), ...(await faultsForGloves(page))];
    if (wrong.length) found[address] = wrong;
  }
  await ask(page, 'mutation { chooseLanguage(language: es) { person { language } } }');
  for (const address of addresses) {
    const wrong = await faultsInSpanish(page, address);
    if (wrong.length) found[`${address} es`] = wrong;
  }
  await ask(page, 'mutation { chooseLanguage(language: en) { person { language } } }');
  await page.context().close();
  expect(found).toEqual({});
});

it("the client's page and the sign-in are without fault", async () => {
  const page = await as('client', PHONE);
  expect(await faults(page, '/water')).toEqual([]);
  await page.context().close();
  const context = await browser.newContext({ viewport: PHONE, baseURL: product.url });
  expect(await faults(await context.newPage(), '/sign-in')).toEqual([]);
  await context.close();
});

it("the card for the cabinet is one sheet of paper for the demonstration's largest controller, in English and in Spanish", async () => {
  const page = await as('office', DESK);
  await page.goto('/');
  const { properties } = await ask(page, '{ properties(text: "Quail Commons") { id controllers { id } } }');
  const sheets: Record<string, number> = {};
  for (const language of ['en', 'es']) {
    await ask(page, `mutation { chooseLanguage(language: ${language}) { person { language } } }`);
    await page.goto(`/cabinet/${properties[0].id}/${properties[0].controllers[0].id}`);
    await page.locator(`html[lang=${language}] .cabinet .cautions`).waitFor();
    for (const format of ['Letter', 'A4'] as const) sheets[`${language} ${format}`] = (await pdfPages(await page.pdf({ format }))).length;
  }
  await ask(page, 'mutation { chooseLanguage(language: en) { person { language } } }');
  await page.context().close();
  expect(sheets).toEqual({ 'en Letter': 1, 'en A4': 1, 'es Letter': 1, 'es A4': 1 });
});

it('who only asks whether a page is there gets the answer that the page would', async () => {
  const asked = await Promise.all(
    ['/', '/findings', '/assets/none.js'].map(async (address) => (await fetch(product.url + address, { method: 'HEAD' })).status),
  );
  expect(asked).toEqual([200, 200, 404]);
});

it('a deep link survives the sign-in', async () => {
  const context = await browser.newContext({ viewport: DESK, baseURL: product.url });
  const page = await context.newPage();
  await page.goto('/findings?state=work');
  await page.waitForURL(/sign-in/);
  await page.getByRole('button', { name: 'Enter as office of Larkspur Grounds' }).click();
  await page.waitForURL(/\/findings/);
  expect(new URL(page.url()).search).toContain('state=work');
  await context.close();
});

it.each([DESK, PHONE])('the last finding of the list, chosen at its end, is in sight ($width px)', async (viewport) => {
  const page = await as('office', viewport);
  await page.goto('/findings');
  const last = page.getByRole('complementary').getByRole('listitem').last();
  const kind = (await last.getByRole('link').innerText()).trim();
  await last.click();
  await page.getByRole('article').getByText(kind, { exact: false }).first().waitFor();
  await expect
    .poll(async () => (await page.getByRole('heading', { level: 1 }).boundingBox())?.y)
    .toSatisfy((y: number) => y >= 0 && y < viewport.height / 2);
  await page.context().close();
});

it('another page begins at its beginning, and the way back leads to where one was', async () => {
  const page = await as('owner', DESK);
  await page.goto('/');
  const last = page.getByRole('main').getByRole('link', { name: 'Pepperwood Court', exact: true });
  await last.scrollIntoViewIfNeeded();
  const scrolled = () => page.evaluate(() => document.documentElement.scrollTop);
  const before = await scrolled();
  expect(before).toBeGreaterThan(500);
  await last.click();
  await page.waitForURL(/properties/);
  expect(await scrolled()).toBe(0);
  await page.goBack();
  await expect.poll(scrolled).toBe(before);
  await page.context().close();

  const crew = await as('crew lead', PHONE);
  await crew.goto('/today');
  await crew.getByRole('main').getByRole('listitem').last().getByRole('link').click();
  await crew.waitForURL(/today\/./);
  expect(await crew.evaluate(() => document.documentElement.scrollTop)).toBe(0);
  await crew.context().close();
});

it("a stage change over the demonstration's supplier goes from the rule to the crew's phone", async () => {
  const RULE = 'Stage 2: two days a week';
  const office = await as('office', DESK);
  await office.goto('/');
  const { waterSuppliers, me } = await ask(office, '{ waterSuppliers { id } me { organization { today } } }');
  await office.goto(`/rule-change/${waterSuppliers[0].id}`);
  await office.getByLabel('Name of the rule').fill(RULE);
  await office.getByLabel('Days a week at most').fill('2');
  await office.getByRole('button', { name: 'Show what it changes' }).click();
  // Every controller of the supplier is planned first, one after the other.
  await office.getByRole('button', { name: 'Bring in the rule' }).click({ timeout: 120_000 });
  await office.getByText(`${RULE} is in.`).waitFor();
  await office.getByLabel('Crew').selectOption({ label: 'Crew 1' });
  await office.getByRole('button', { name: 'Make the work orders' }).click();
  await office.getByText(/work orders are made/).waitFor({ timeout: 120_000 });
  const { workOrders } = await ask(
    office,
    '{ workOrders { what day crew { name } property { name } plannedSettings { state programs { days stations { station } } } } }',
  );
  type Order = { what: string; day: string; crew: { name: string }; property: { name: string }; plannedSettings: Planned };
  type Planned = { state: string; programs: { days: string; stations: { station: number }[] }[] };
  const made = (workOrders as Order[]).filter(({ what }) => what === RULE);
  expect(made.length).toBeGreaterThan(10);
  for (const { plannedSettings, crew, day } of made) {
    expect([crew.name, day]).toEqual(['Crew 1', me.organization.today]);
    const days = new Set(plannedSettings.programs.flatMap((program) => program.days.split(' ')));
    expect(days.size, JSON.stringify(plannedSettings)).toBeLessThanOrEqual(2);
  }
  await office.context().close();

  const phone = await as('crew lead', PHONE);
  await phone.goto('/today');
  const { property, plannedSettings } = made[0]!;
  const stop = await phone
    .getByRole('link', { name: new RegExp(property.name) })
    .first()
    .getAttribute('href');
  await phone.goto(`${stop}?step=settings`);
  const { length } = plannedSettings.programs[0]!.days.split(' ');
  await phone.getByRole('button', { name: 'Set as planned' }).waitFor();
  await phone
    .getByText(length === 1 ? /^1 day/ : /^2 days/)
    .first()
    .waitFor();
  await phone.getByRole('button', { name: 'Set as planned' }).click();
  await phone.getByText(/Kept at/).waitFor();
  await phone.context().close();
});
