import { cleanup, fireEvent, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { viewerOf } from '../support/draw-page.js';
import { page } from './drawn-property.js';

afterEach(cleanup);

const MONTHS = [
  '2025-09',
  '2025-10',
  '2025-11',
  '2025-12',
  '2026-01',
  '2026-02',
  '2026-03',
  '2026-04',
  '2026-05',
  '2026-06',
  '2026-07',
  '2026-08',
];
/** From 3 June 2025, 90 days before September, to 31 August 2026. */
const DAYS = 455;
const ETO = 5;

/** Without rain a zone needs what its plants lose: 365 days of ETo by its factor and area, divided by 0.4 + 0.6 DU. */
const zone = (zoneId: string, given: object = {}) => ({
  zoneId,
  areaM2: 900,
  plantFactor: 0.8,
  density: 1,
  shade: 1,
  rawMm: 20,
  duLq: 0.65,
  leachingFraction: 0,
  assumed: [],
  isCounted: true,
  ...given,
});
const trees = zone('z2', { areaM2: 300, plantFactor: 0.5, duLq: 0.8, assumed: ['plantFactor', 'duLq'] });
const dry = { firstDay: '2025-06-03', etoMm: Array<number | null>(DAYS).fill(ETO), rainMm: Array<number | null>(DAYS).fill(0) };
const year = (given: object = {}) => ({
  months: MONTHS,
  weather: dry,
  stages: [{ months: MONTHS, zones: [zone('z1'), trees] }],
  ...given,
});

const opened = async (whatIf: object | null, rest: Parameters<typeof page>[0] = {}) => {
  const asked: unknown[] = [];
  const answer = (given: unknown) => {
    asked.push(given);
    return whatIf;
  };
  const drawn = page({ ...rest, property: { whatIf: answer, ...rest.property } });
  const heading = await screen.findByRole('heading', { level: 2, name: /^What if plants|^¿Y si las plantas/ });
  const part = within(heading.closest('section') as HTMLElement);
  const before = asked.length;
  await drawn.user.click(part.getByText(/^Try it on|^Probarlo con/));
  return { ...drawn, part, before, asked };
};
const slide = (slider: HTMLElement, level: number) => fireEvent.change(slider, { target: { value: String(level) } });
const sentence = (part: { readonly getByRole: (role: string) => HTMLElement }) => part.getByRole('status').textContent;

describe('what if', () => {
  it('is folded and asks for nothing until it is opened', async () => {
    const { part, before, asked, calls } = await opened(year(), { at: '/properties/p1?month=2026-08' });
    expect(before).toBe(0);
    await part.findByLabelText('Zone');
    expect(asked).toEqual([{ until: '2026-08' }]);
    expect(calls.filter(({ name }) => name === 'WhatIfOfProperty')).toHaveLength(1);
  });

  it('answers for all zones in a sentence, numbers and twelve bars', async () => {
    const { part, calls } = await opened(year());
    await part.findByLabelText('Zone');
    // 439,395 gal of lawn and 82,169 gal of trees.
    expect(sentence(part)).toBe('All zones together need 521,600 gal a year as it is.');
    slide(part.getByLabelText('Better nozzles: uniformity of at least'), 90);
    // 0.79 becomes 0.94 for the lawn, 0.88 for the trees as well: 70,116 and 5,245 gal less.
    expect(sentence(part)).toBe(
      'With a drip-like uniformity of at least 90%, all zones together would need 75,400 gal less a year, about $426.',
    );
    expect(part.getByText('From September 2025 to August 2026: now 521,600 gal, then 446,200 gal.')).toBeTruthy();
    slide(part.getByLabelText('Better nozzles: uniformity of at least'), 89);
    expect(sentence(part)).toMatch(/^With a uniformity of at least 89%, /);
    slide(part.getByLabelText('Better nozzles: uniformity of at least'), 90);
    const bars = within(part.getByRole('list', { name: 'Need by month, now and then, thousand gal' })).getAllByRole('listitem');
    expect(bars).toHaveLength(12);
    // 31 of 365 days.
    expect(bars[11]!.textContent).toBe('Augnow 44.3then 37.9');
    expect(calls.filter(({ name }) => name === 'WhatIfOfProperty')).toHaveLength(1);
  });

  it('answers for one zone with its own plant factor, nozzles and area, and goes back', async () => {
    const { part, user } = await opened(year());
    await user.selectOptions(await part.findByLabelText('Zone'), 'Pool lawn');
    expect(sentence(part)).toBe('Pool lawn needs 439,400 gal a year as it is.');
    const plants = part.getByLabelText('Other plants: plant factor');
    expect(plants.getAttribute('aria-valuetext')).toBe('0.80');
    slide(plants, 60);
    slide(part.getByLabelText('Less lawn or beds: irrigated area'), 50);
    expect(part.getByLabelText('Less lawn or beds: irrigated area').getAttribute('aria-valuetext')).toBe('4,844 sq ft');
    // Three quarters of the factor on half of the area leave 0.375 of the need.
    expect(sentence(part)).toBe(
      'With a plant factor of 0.60 and only 50% of the area, Pool lawn would need 274,600 gal less a year, about $1,552.',
    );
    slide(plants, 100);
    slide(part.getByLabelText('Less lawn or beds: irrigated area'), 100);
    expect(sentence(part)).toBe('With a plant factor of 1.00, Pool lawn would need 109,800 gal more a year, about $621.');
    slide(plants, 80);
    expect(sentence(part)).toBe('Pool lawn needs 439,400 gal a year as it is.');
    slide(plants, 30);
    await user.click(part.getByRole('button', { name: 'Back to as it is' }));
    expect(sentence(part)).toBe('Pool lawn needs 439,400 gal a year as it is.');
  });

  it('says that it is an estimate, and what of the zone nobody stated', async () => {
    const { part, user } = await opened(year());
    await user.selectOptions(await part.findByLabelText('Zone'), 'Parkway trees');
    expect(part.getByText(/^An estimate: plants’ needs differ by species/)).toBeTruthy();
    expect(part.getByText('Not on record but assumed: plant factor and uniformity.')).toBeTruthy();
    await user.selectOptions(part.getByLabelText('Zone'), 'Pool lawn');
    expect(part.queryByText(/^Not on record/)).toBeNull();
  });

  it('leaves out of all what the account does not count, and tells no money where water has no price', async () => {
    const stages = [{ months: MONTHS, zones: [zone('z1'), { ...trees, isCounted: false }] }];
    const { part, user } = await opened(year({ stages }), { property: { account: null } });
    expect(await part.findByRole('option', { name: 'All zones that the account counts' })).toBeTruthy();
    expect(sentence(part)).toBe('All zones together need 439,400 gal a year as it is.');
    expect(part.getByText('What water costs here is not known, so no money is told.')).toBeTruthy();
    slide(part.getByLabelText('Other plants: their need, of what it is now'), 50);
    expect(sentence(part)).toBe('With plants that need 50% of what they do now, all zones together would need 219,700 gal less a year.');
    await user.selectOptions(part.getByLabelText('Zone'), 'Parkway trees');
    expect(sentence(part)).toBe('Parkway trees needs 82,200 gal a year as it is.');
  });

  it('says why there is no number', async () => {
    const noWeather = await opened(year({ weather: null }));
    expect(await noWeather.part.findByText('No weather is known here, so no need can be told')).toBeTruthy();
    expect(noWeather.part.queryByRole('slider')).toBeNull();
    cleanup();
    const etoMm = dry.etoMm.map((eto, day) => (day >= 90 && day < 120 ? null : eto));
    const some = await opened(year({ weather: { ...dry, etoMm } }));
    expect(await some.part.findByText(/^It is missing in September 2025\./)).toBeTruthy();
    expect(some.part.queryByRole('slider')).toBeNull();
    cleanup();
    const noZones = await opened(year({ stages: [{ months: MONTHS, zones: [] }] }));
    expect(await noZones.part.findByText('Without zones there is nothing to try')).toBeTruthy();
  });

  it('speaks Spanish and metric', async () => {
    const { part } = await opened(year(), { language: 'es', units: 'metric' });
    slide(await part.findByLabelText('Mejores boquillas: uniformidad de al menos'), 90);
    expect(sentence(part)).toBe(
      'Con una uniformidad de al menos 90% (como la del goteo), todas las zonas juntas necesitarían 285 m³ menos al año, unos $426.',
    );
  });

  it('is not there for who does not read the portfolio', async () => {
    page({ viewer: viewerOf({ permissions: ['read property'] }) });
    await screen.findByRole('heading', { level: 1 });
    expect(screen.queryByRole('heading', { name: /^What if/ })).toBeNull();
  });
});
