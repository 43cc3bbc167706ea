import sharp from 'sharp';
import type { Page } from 'playwright-core';
import type { Ask, Person } from './door.js';

/** A stop of the day as the proof works it. */
export interface StopToWork {
  readonly id: string;
  readonly name: string;
  /** more than the meter's last register */
  readonly register: string;
}

const DAY = '2026-09-24';
const SIDES = { width: 400, height: 540 };
const GRAIN = 14;

/** Gives a crew work at so many properties on the organization's day, in the properties' order. */
export async function giveWork(office: Person, crewId: string, count: number): Promise<StopToWork[]> {
  const { properties } = await office.ask(
    '{ properties { id name zones { id } controllers { id } meters { id removedOn retiredAt readings(first: 1) { register } } } }',
  );
  const able = properties.filter(({ meters }: Property) => registerOf(meters) !== null).slice(0, count) as Property[];
  for (const { id } of able) await giveOne(office.ask, id, crewId);
  const { today } = await office.ask(
    'query($day: Date!, $crewId: ID) { today(day: $day, crewId: $crewId) { stops { id property { id name } } } }',
    {
      day: DAY,
      crewId,
    },
  );
  const stops = today.flatMap((route: { stops: { id: string; property: { id: string; name: string } }[] }) => route.stops);
  return able.map(({ id, meters }) => {
    const stop = stops.find(({ property }: { property: { id: string } }) => property.id === id);
    return { id: stop.id, name: stop.property.name, register: String(Math.ceil((registerOf(meters) ?? 0) + 1)) };
  });
}

interface Property {
  readonly id: string;
  readonly meters: readonly {
    readonly removedOn: string | null;
    readonly retiredAt: string | null;
    readonly readings: readonly { readonly register: number }[];
  }[];
}

const registerOf = (meters: Property['meters']): number | null =>
  meters.find(({ removedOn, retiredAt }) => !removedOn && !retiredAt)?.readings[0]?.register ?? null;

async function giveOne(ask: Ask, propertyId: string, crewId: string): Promise<void> {
  const created = await ask('mutation($input: WorkOrderInput!) { createWorkOrder(input: $input) { ... on WorkOrder { id version } } }', {
    input: { propertyId, kind: 'inspect', what: 'Walk the zones' },
  });
  const { id, version } = created['createWorkOrder'];
  await ask(
    'mutation($id: ID!, $version: Int!, $crewId: ID, $day: Date) { assignWorkOrder(id: $id, version: $version, crewId: $crewId, day: $day) { __typename } }',
    { id, version, crewId, day: DAY },
  );
}

/** A photo like a camera's as far as the phone is concerned: grainy, with a place in it, and never the same twice. */
const photo = (nth: number): Promise<Buffer> =>
  sharp({ create: { ...SIDES, channels: 3, background: 'black', noise: { type: 'gaussian', mean: 90 + (nth % 80), sigma: GRAIN } } })
    .withExifMerge({ IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '38/1 4/1 15/1' } })
    .jpeg({ quality: 95 })
    .toBuffer();

/** Works one stop as a crew does: register, a leak in the first zone, photos, the order, the end. How long Save took, by the page's own clock. [ms] */
export async function workStop(page: Page, stop: StopToWork, photos: number): Promise<number> {
  await page.goto(`/today/${stop.id}?step=meter`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  for (const key of stop.register) await page.getByRole('button', { name: key, exact: true }).click();
  const saveMs = await saved(page);
  await page.goto(`/today/${stop.id}?step=zones`);
  await page.getByRole('button', { name: /^Leak/ }).click();
  for (let at = 0; at < photos; at += 1) {
    const buffer = await photo(Number(stop.register) + at);
    await page.locator('input[type=file]').setInputFiles({ name: 'seen.jpg', mimeType: 'image/jpeg', buffer });
    await page.getByRole('button', { name: at === 0 ? '1 photo' : `${at + 1} photos` }).waitFor();
  }
  await page.goto(`/today/${stop.id}?step=done`);
  await page.getByRole('button', { name: 'Close the stop' }).waitFor();
  for (const done of await page.locator('main').getByRole('button', { name: 'Done', exact: true }).all()) await done.click();
  await page.getByRole('button', { name: 'Close the stop' }).click();
  await page.getByRole('heading', { name: /^Closed at/ }).waitFor();
  return saveMs;
}

/** Presses Save, and waits in the page until it says that the reading is kept: from then on it is in the phone's store. */
const saved = (page: Page): Promise<number> =>
  page.evaluate(async () => {
    const save = [...document.querySelectorAll('button')].find(({ textContent }) => /^Save/.test(textContent));
    if (!save) throw new Error('There is no Save.');
    const begun = performance.now();
    save.click();
    while (!/Kept at/.test(document.querySelector('main')?.textContent ?? '')) {
      if (performance.now() - begun > 10_000) throw new Error('It was not kept.');
      await new Promise((resolve) => setTimeout(resolve, 1));
    }
    return performance.now() - begun;
  });
