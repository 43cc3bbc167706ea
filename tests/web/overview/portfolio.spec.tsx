import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { PortfolioPage } from '../../../apps/web/src/features/overview/portfolio/PortfolioPage.js';
import { builtAccount, builtCrew, builtFinding, builtProperty, builtWorkOrder, gallons } from '../support/built.js';
import { drawPage } from '../support/draw-page.js';

afterEach(cleanup);

const crew2 = builtCrew('crew-2', 'Crew 2');
const row = (id: string, name: string, given: object = {}) => ({
  property: builtProperty(id, name, { latitude: 37 + Number(id.slice(1)) / 100, longitude: -121 }),
  account: null,
  topFinding: null,
  findingCount: 0,
  whoIsOnIt: null,
  why: { code: 'within-what-can-be-measured', details: {} },
  ...given,
});
const over = row('p1', 'Quail Commons', {
  account: builtAccount('a1', { allowed: 252_100, needed: 238_500, programmed: 331_200, metered: 389_600 }),
  topFinding: builtFinding('f1', 'over-programmed'),
  findingCount: 2,
  why: { code: 'over-programmed', details: { programs: ['A'], zoneIds: ['z1', 'z2'], percentOfNow: 72 } },
  whoIsOnIt: builtWorkOrder('w1', 'adjust', { state: 'given out', crew: crew2, day: '2026-09-28' }),
});
const alone = row('p2', 'Old Mill Shops', {
  account: builtAccount('a2', { allowed: 104_000, needed: 101_400, programmed: 118_300, metered: 196_800 }),
  topFinding: builtFinding('f2', 'unexplained use'),
  findingCount: 1,
  why: {
    code: 'unexplained use',
    details: { meteredLitres: gallons(196_800), programmedLitres: gallons(118_300), ratio: 1.66, usualRatio: null },
  },
});
const under = row('p3', 'Cutbank Trail', {
  account: builtAccount('a3', { allowed: 118_000, needed: 121_500, programmed: 98_700, metered: 97_200 }),
});
const unknown = row('p4', 'Mesquite Flats School', {
  account: builtAccount('a4', { allowed: 260_000, needed: 241_000, programmed: 268_400 }),
  why: { code: 'readings-missing', details: { missingShare: 0.8 } },
});
const near = row('p5', 'Alder Row', {
  account: builtAccount('a5', { allowed: 29_900, needed: 28_800, programmed: 29_000, metered: 29_100 }),
});

const sums = {
  properties: 5,
  overProperties: 2,
  aboveNeedLitres: gallons(246_500),
  aboveNeedMoney: 1393,
  settingsLitres: gallons(109_600),
  unexplainedLitres: gallons(136_900),
  unsplitLitres: gallons(78_000),
  underProperties: 1,
  notCounted: 1,
};
const portfolio = {
  month: '2026-09',
  months: ['2026-08', '2026-09'],
  through: '2026-09-24',
  total: 5,
  next: null,
  rows: [over, alone, under, unknown, near],
  sums,
};

const page = (given: { at?: string; portfolio?: object; language?: 'en' | 'es'; units?: 'us' | 'metric' } = {}) => {
  const { at = '/', portfolio: changed, ...rest } = given;
  return drawPage(<PortfolioPage />, { at, route: '/', answers: { portfolio: { ...portfolio, ...changed }, crews: [crew2] }, ...rest });
};
const asked = (calls: readonly { name: string; variables: object }[]) => calls.filter(({ name }) => name === 'Portfolio').at(-1)?.variables;

describe('the portfolio', () => {
  it('opens with a sentence that answers, and what the water was', async () => {
    page();
    expect((await screen.findByRole('heading', { level: 1 })).textContent).toBe(
      '2 of 5 properties took 246,500 gal more than their plants needed, about $1,393',
    );
    expect(
      screen.getByText(
        /^109,600 gal of it is settings; 136,900 gal no program explains; 78,000 gal where settings are not known. One property gets too little. One cannot be counted yet.$/,
      ),
    ).toBeTruthy();
    expect(screen.getByText('September 2026, to Thursday 24 September')).toBeTruthy();
  });

  it('says it in Spanish and in metric units', async () => {
    page({ language: 'es', units: 'metric' });
    expect((await screen.findByRole('heading', { level: 1 })).textContent).toBe(
      '2 de 5 propiedades tomaron 933 m³ más de lo que sus plantas necesitaban, unos $1,393',
    );
  });

  it('ranks those above need, with the reason in words, gallons, money and who is on it', async () => {
    page();
    const first = within((await screen.findByRole('link', { name: 'Quail Commons' })).closest('tr') as HTMLElement);
    expect(first.getByText(/^Program A gives 2 zones more than the plants need. About 72%/)).toBeTruthy();
    expect(first.getByText('151,100')).toBeTruthy();
    expect(first.getByText('$854')).toBeTruthy();
    expect(first.getByText('Mon 28 Sep').closest('td')?.textContent).toBe('Crew 2, Mon 28 Sep');
    expect(first.getByRole('img', { name: /^allowed 252,100 gal/ })).toBeTruthy();
    const second = within(screen.getByRole('link', { name: 'Old Mill Shops' }).closest('tr') as HTMLElement);
    expect(second.getByRole('link', { name: 'nobody yet' }).getAttribute('href')).toBe('/findings/f2');
  });

  it('keeps too little, not counted and near need apart; unknown is never a number', async () => {
    const { user, address } = page();
    const order = async () => (await screen.findAllByRole('row')).map((each) => each.textContent ?? '').map((text) => text.slice(0, 24));
    expect((await order()).map((text) => text.trim()).slice(1)).toEqual([
      expect.stringMatching(/^1Quail/),
      expect.stringMatching(/^2Old Mill/),
      'Getting too little',
      expect.stringMatching(/^▽Cutbank/),
      'Cannot be counted yet',
      expect.stringMatching(/^–Mesquite/),
    ]);
    const missing = within(screen.getByRole('link', { name: 'Mesquite Flats School' }).closest('tr') as HTMLElement);
    expect(missing.getByText('not known')).toBeTruthy();
    expect(missing.getByText('No meter reading for 80% of the month.')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Show it' }));
    expect(address()).toBe('/?near=shown');
    expect(screen.getByRole('link', { name: 'Alder Row' })).toBeTruthy();
  });
});

describe('the portfolio’s address and keys', () => {
  it('keeps filters, sort and month in the address, and asks for exactly that', async () => {
    const { user, address, calls } = page({ at: '/?why=settings&who=nobody&month=2026-08&sort=name&kind=stale' });
    await screen.findByRole('heading', { level: 1 });
    expect(asked(calls)).toEqual({
      month: '2026-08',
      sort: 'name',
      first: 500,
      filter: { text: null, reason: 'settings', who: 'nobody', kind: 'stale' },
    });
    expect(screen.getByText(/Of what is shown here/)).toBeTruthy();
    await user.selectOptions(screen.getByLabelText('Who is on it'), 'Crew 2');
    await user.click(screen.getByRole('button', { name: /^Above need/ }));
    await user.type(screen.getByRole('searchbox'), 'mill');
    await waitFor(() => expect(address()).toBe('/?why=settings&who=crew-2&month=2026-08&sort=volume&kind=stale&text=mill'));
    await waitFor(() => expect(asked(calls)).toMatchObject({ sort: 'volume', filter: { text: 'mill', who: 'crew-2' } }));
    await user.click(screen.getByRole('button', { name: 'Show all again' }));
    await waitFor(() => expect(address()).toBe('/?month=2026-08&sort=volume'));
  });

  it('does not believe an address that means nothing', async () => {
    const { calls } = page({ at: '/?why=magic&month=13&sort=up' });
    await screen.findByRole('heading', { level: 1 });
    expect(asked(calls)).toMatchObject({ month: null, sort: 'money', filter: { reason: null } });
  });

  it('is walked with j and k, and Enter opens the property', async () => {
    const { user, address } = page();
    await screen.findByRole('link', { name: 'Quail Commons' });
    await user.keyboard('jjk');
    expect(screen.getByRole('link', { name: 'Quail Commons' }).closest('tr')?.dataset['here']).toBe('yes');
    await user.keyboard('j{Enter}');
    expect(address()).toBe('/properties/p2?month=2026-09');
  });
});

describe('the portfolio beside and without its list', () => {
  it('has the same places on the map, with the same numbers', async () => {
    const { user, address } = page();
    await user.click(await screen.findByRole('link', { name: '2. Old Mill Shops: above need, mostly unexplained' }));
    expect(address()).toBe('/properties/p2?month=2026-09');
  });

  it('says what to do when there is nothing, and when nothing fits', async () => {
    const none = { ...sums, properties: 0, overProperties: 0, notCounted: 0, underProperties: 0 };
    page({ portfolio: { rows: [], total: 0, sums: none } });
    expect((await screen.findByRole('link', { name: 'Bring your properties in' })).getAttribute('href')).toBe('/setup');
    cleanup();
    page({ at: '/?text=nowhere', portfolio: { rows: [], total: 0, sums: none } });
    await screen.findByRole('heading', { name: 'No property fits what you look for' });
  });

  it('says when the server does not do it, and tries again', async () => {
    drawPage(<PortfolioPage />, {
      answers: {
        portfolio: () => {
          throw new Error('no such month');
        },
        crews: [],
      },
    });
    expect((await screen.findByRole('alert')).textContent).toContain('no such month');
    expect(screen.getByRole('button', { name: 'Try again' })).toBeTruthy();
  });
});
