import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { builtAccount, gallons } from '../support/built.js';
import { viewerOf } from '../support/draw-page.js';
import { page, september } from './drawn-property.js';

afterEach(cleanup);

const section = async (name: string | RegExp) =>
  within((await screen.findByRole('heading', { level: 2, name })).closest('section') as HTMLElement);
const rows = (table: HTMLElement) =>
  within(table)
    .getAllByRole('row')
    .map((row) => [...row.children].map((cell) => cell.textContent?.trim()));

describe('a property', () => {
  it('opens with the verdict, its month, and the way to what waits', async () => {
    page();
    await screen.findByRole('heading', { level: 1, name: 'Quail Commons took 151,100 gal more than its plants needed, about $854' });
    expect(screen.getByText(/3 zones, 29,063 sq ft · 1 controller · 1 meter/)).toBeTruthy();
    expect(screen.getByRole('link', { name: 'Decide its findings' }).getAttribute('href')).toBe('/findings/f3');
    expect(screen.getByText(/^Account computed Fri 25 Sep, 7:40 am/)).toBeTruthy();
  });

  it('says the same gallons over the allowance as the gauge, which takes one rounded volume from the other', async () => {
    const odd = builtAccount('a10', { allowed: 204_151, needed: 182_100, programmed: 272_400, metered: 321_149 });
    page({ property: { account: odd, accounts: [odd] } });
    const account = await section(/^116,900 gal over its allowance, about \$\d+$/);
    expect(account.getByRole('img', { name: /metered above allowed: 116,900 gal, about/ })).toBeTruthy();
  });

  it('draws the account, and tells step by step why it is off', async () => {
    page();
    const account = await section('137,500 gal over its allowance, about $777');
    expect(account.getByText('1 to 24 September 2026, 24 of 30 nights. Need and allowance are for the same days.')).toBeTruthy();
    expect(account.getByRole('img', { name: /allowed 252,100 gal/ })).toBeTruthy();
    expect(account.getByText('A normal year’s ordinance allowance: 1,180,000 gal.')).toBeTruthy();
    const steps = rows(account.getByRole('table', { name: 'From allowed to metered, step by step' }));
    expect(steps.map((row) => row.at(-1))).toEqual(['252,100', '− 13,600', '+ 92,700', '+ 58,400', '389,600']);
    expect(account.getByText('Settings: 101,900 gal too much, 9,200 gal too little.')).toBeTruthy();
    expect(account.getByRole('link', { name: 'Over-programmed' }).getAttribute('href')).toBe('/findings/f1');
    expect(account.getByText('Crew 2, Mon 28 Sep')).toBeTruthy();
    expect(account.getByText('Recycled water is not for drinking; its signs stay.')).toBeTruthy();
    expect(account.getByText('Street side: the test was due on Tue 1 Sep 2026.')).toBeTruthy();
  });

  it('keeps too much and too little apart in the zones, and says why a zone is not known', async () => {
    page();
    const zones = await section('One zone gets 101,900 gal too much, one gets 9,200 gal too little');
    expect(rows(zones.getByRole('table')).slice(1)).toEqual([
      ['3', 'Pool lawn cool-season turf, rotor', '500', '34,100', '50,100', '', '', '16,000'],
      ['9', 'Parkway trees cool-season turf, rotor', '500', '15,900', '8,000', '', '7,900', ''],
      ['11', 'Entry beds cool-season turf, rotorThe flow of zone 11 (Entry beds) is not known.', '–', '12,100', '–', '', '', ''],
      ['', '3 zones', '', '62,100', '–', '', '9,200', '101,900'],
    ]);
  });

  it('says what is missing instead of a number', async () => {
    page({ property: { account: builtAccount('a7', { allowed: 252_100, needed: 238_500 }) } });
    await screen.findByRole('heading', { level: 1, name: 'Quail Commons cannot be counted yet' });
    expect(screen.getAllByText('No meter reading for a part of the month.').length).toBeGreaterThan(0);
    const account = await section('How it stands against its allowance is not known');
    expect(rows(account.getByRole('table', { name: /step by step/ })).map((row) => row.at(-1))).toEqual([
      '252,100',
      '− 13,600',
      '–',
      '–',
      '–',
    ]);
    cleanup();
    page({
      property: {
        account: null,
        zones: [],
        meters: [],
        controllers: [],
        accounts: [],
        findings: [],
        workOrders: [],
        visits: [],
        changes: [],
      },
    });
    await screen.findByRole('heading', { level: 1, name: 'Quail Commons cannot be counted yet' });
    for (const name of [/^No account of/, 'No zones yet', 'No meter yet', 'Nothing was found here', 'Nobody has visited yet'])
      expect(screen.getByRole('heading', { name })).toBeTruthy();
  });
});

describe('the months of a property', () => {
  it('shows them on one scale, and leads to each', async () => {
    page();
    const year = await section('Metered above need in one of 2 months');
    expect(rows(year.getByRole('table')).slice(1)).toEqual([
      ['', 'Aug', 'Sep to 24'],
      ['metered, thousand gal', '359.5', '389.6'],
      ['rain, in', '0.31', '0.31'],
    ]);
    expect(year.getByRole('link', { name: 'Aug' }).getAttribute('href')).toBe('/properties/p1?month=2026-08');
  });

  it('keeps the month in the address', async () => {
    const { user, address, calls } = page();
    await user.selectOptions(await screen.findByLabelText('Month'), 'August 2026');
    await waitFor(() => expect(address()).toBe('/properties/p1?month=2026-08'));
    await screen.findByRole('heading', { level: 1, name: 'Quail Commons is within what can be measured of its need' });
    expect(calls.at(-1)?.variables).toEqual({ id: 'p1', month: '2026-08' });
  });

  it('says what would make each gap surer, the largest part first, and what is assumed of several zones in one line', async () => {
    page();
    const doubt = await section('What would make this surer');
    expect(doubt.getAllByRole('heading', { level: 3 }).map((heading) => heading.textContent)).toEqual([
      'Metered above need: 151,100 gal, give or take 3,000 gal',
      'Unexplained gap: 58,400 gal, give or take 3,000 gal',
      'Settings gap: 92,700 gal, give or take 3,000 gal',
      'Landscape gap: −13,600 gal, give or take 3,000 gal',
      'What the account stands on',
    ]);
    expect(doubt.getAllByRole('listitem').map((item) => item.textContent)).toEqual([
      '61% Check the plant factor of zone 3 (Pool lawn).',
      '30% Have meter Irrigation tested.',
      '70% Write down the run times that controller Clubhouse has set itself.',
      '20% Measure the flow of zone 9 (Parkway trees).',
      '5% Use a weather station that is nearer, or measures more.',
      '2 zones: uniformity is assumed, not measured.',
    ]);
    // No part is named of the two other gaps.
    expect(doubt.getAllByText('Nothing to name: the account has no known uncertainty.')).toHaveLength(2);
  });

  it('tells water below need as such, by how much', async () => {
    const below = { ...september, aboveNeed: { ...september.aboveNeed, litres: gallons(-13_400) } };
    page({ property: { account: below, accounts: [below] } });
    const doubt = await section('What would make this surer');
    expect(doubt.getByRole('heading', { level: 3, name: 'Metered below need: 13,400 gal, give or take 3,000 gal' })).toBeDefined();
    expect(doubt.queryByRole('heading', { name: /^Metered above need/ })).toBeNull();
  });

  it('says where a gap is an estimate', async () => {
    page();
    expect(await screen.findAllByText('An estimate: the controller sets its own times by weather.')).toHaveLength(1);
  });

  it('speaks Spanish and metric', async () => {
    page({ language: 'es', units: 'metric' });
    await screen.findByRole('heading', { level: 1, name: 'Quail Commons tomó 572 m³ más de lo que sus plantas necesitaban, unos $854' });
  });

  it('shows a client no way into what is not theirs', async () => {
    page({ viewer: viewerOf({ role: 'client', permissions: ['read property', 'read reports'] }) });
    await screen.findByRole('heading', { level: 1 });
    expect(screen.queryByRole('link', { name: 'Portfolio' })).toBeNull();
    expect(screen.queryByRole('link', { name: 'Decide its findings' })).toBeNull();
    expect(screen.queryByRole('button', { name: 'Save the reading' })).toBeNull();
  });
});
