import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { WaterPage } from '../../../apps/web/src/features/water/WaterPage.js';
import { builtAccount, builtProperty } from '../support/built.js';
import { drawPage, viewerOf } from '../support/draw-page.js';

afterEach(cleanup);

const september = builtAccount('a9', { allowed: 252_100, needed: 238_500, programmed: 331_200, metered: 389_600 });
const august = builtAccount(
  'a8',
  { allowed: 310_000, needed: 300_000, programmed: null, metered: null },
  { month: '2026-08', through: '2026-08-31' },
);
const quail = builtProperty('p1', 'Quail Commons', { account: september, accounts: [august, september] });
const client = viewerOf({ role: 'client', clientId: 'client-p1', permissions: ['read property', 'read reports'] });

const page = (given: { properties?: unknown; reports?: unknown; language?: 'en' | 'es'; more?: Record<string, unknown> } = {}) =>
  drawPage(<WaterPage />, {
    at: '/water',
    route: '/water',
    viewer: client,
    ...(given.language ? { language: given.language } : {}),
    answers: {
      properties: given.properties ?? [quail],
      waterReports: given.reports ?? [],
      recommendations: [],
      clientQuestions: [],
      ...given.more,
    },
  });

describe('a client’s water', () => {
  it('answers in a sentence for each property, and says that the month is not over', async () => {
    page();
    expect(
      await screen.findByRole('heading', { name: 'Quail Commons took 389,600 gal, 151,100 gal more than its plants needed, about $854' }),
    ).toBeTruthy();
    expect(screen.getByText('The month is not over: all volumes are to Thursday 24 September.')).toBeTruthy();
  });

  it('does not say “about” of a gap that is a third of the need, though it may be none', async () => {
    page({
      properties: [builtProperty('p2', 'Alder Row', { account: builtAccount('a7', { needed: 9000, metered: 6000 }) })],
    });
    expect(
      await screen.findByRole('heading', {
        name: 'Alder Row took 6,000 gal, less than the 9,000 gal that its plants needed, but not by more than these figures may be off',
      }),
    ).toBeTruthy();
  });

  it('lists the months, and tells what is not known as not known', async () => {
    page();
    const rows = within(await screen.findByRole('table', { name: 'Quail Commons, month by month' })).getAllByRole('row');
    expect(rows.map(({ textContent }) => textContent)).toEqual([
      'Monthallowed, galneeded, galmetered, gal',
      'September 2026252,100238,500389,600',
      'August 2026310,000300,000not known',
    ]);
  });

  it('shows another month by its address', async () => {
    const { user, calls, address } = page();
    await user.selectOptions(await screen.findByLabelText('Month'), 'August 2026');
    expect(address()).toBe('/water?month=2026-08');
    expect(calls.at(-1)?.variables).toEqual({ month: '2026-08' });
  });

  it('lists only reports that were sent', async () => {
    const report = (id: string, state: string) => ({
      id,
      version: 1,
      clientId: 'c',
      fromOn: '2026-08-01',
      untilOn: '2026-08-31',
      state,
      sentAt: '2026-09-03T17:00:00Z',
      note: null,
      content: { verdict: 'In August 2026, Quail Commons took 393,000 gal.' },
    });
    page({ reports: [report('r1', 'sent'), report('r2', 'draft')], language: 'es' });
    expect(await screen.findByRole('heading', { name: 'Un informe del agua' })).toBeTruthy();
    expect(screen.getByText('1 al 31 de agosto de 2026')).toBeTruthy();
    expect(screen.getByRole('link', { name: /\(PDF\)/ }).getAttribute('href')).toBe('/api/reports/r1/report.pdf');
  });

  it('says what to do when nothing is there', async () => {
    page({ properties: [] });
    expect(await screen.findByRole('heading', { name: 'No property of yours is on record yet' })).toBeTruthy();
  });

  it('does not invent a number for a property without readings', async () => {
    page({ properties: [{ ...quail, account: august }] });
    expect(await screen.findByRole('heading', { name: /^Quail Commons: how much it took is not known/ })).toBeTruthy();
  });

  it('asks the office, and shows what it answered', async () => {
    const asked = { id: 'q1', about: 'Quail Commons', question: 'Why so much?', askedAt: '2026-09-20T16:00:00Z' };
    const { user, calls } = page({
      more: {
        clientQuestions: [{ ...asked, answer: 'A valve stuck.', answeredAt: '2026-09-21T16:00:00Z' }],
        askOffice: { id: 'q2' },
      },
    });
    expect(await screen.findByText('A valve stuck.')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Send the question' }));
    expect(screen.getByText(/Write your question first/)).toBeTruthy();
    await user.type(screen.getByRole('textbox', { name: 'Your question' }), 'Is it mended?');
    await user.click(screen.getByRole('button', { name: 'Send the question' }));
    expect(calls.find(({ name }) => name === 'AskOffice')?.variables).toEqual({ question: 'Is it mended?', propertyId: null });
  });

  it('approves what is recommended only when asked twice, and says what it costs and saves', async () => {
    const { user, calls } = page({
      more: {
        recommendations: [
          {
            id: 'w1',
            version: 1,
            from: 'work order',
            propertyName: 'Quail Commons',
            zoneName: null,
            kind: 'upgrade',
            what: 'Drip for the shrubs.',
            cost: 2400,
          },
          {
            id: 'f1',
            version: 3,
            from: 'finding',
            propertyName: 'Quail Commons',
            zoneName: 'Beds',
            kind: 'mixed water needs',
            what: '',
            cost: null,
            litres: 1000,
            money: 2,
          },
          {
            ...{ id: 'f2', version: 1, from: 'finding', propertyName: 'Quail Commons', zoneName: 'Clubhouse', kind: 'mixed water needs' },
            ...{ what: '', cost: null, litres: 32_281.654418, money: 75.811055 },
          },
        ],
        approveRecommended: [],
      },
    });
    expect(await screen.findByText('Quail Commons: Drip for the shrubs. It costs about $2,400.')).toBeTruthy();
    // 387,380 L a year are written as 102,300 gal: the money is of what is written, as in the report, and not the $910 of the exact number.
    expect(screen.getByText(/It would save about 102,300 gal a year, about \$909\./)).toBeTruthy();
    const words =
      'Quail Commons, Beds: Give plants with different needs lines of their own. It would save about 3,170 gal a year, about $24.';
    await user.click(screen.getByRole('button', { name: `Ask for an offer: ${words}` }));
    expect(calls.some(({ name }) => name === 'ApproveRecommended')).toBe(false);
    expect(screen.getByText(/^Its price is not known yet/)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Yes, make me an offer' }));
    expect(calls.find(({ name }) => name === 'ApproveRecommended')?.variables).toEqual({ id: 'f1', version: 3 });
    expect(await screen.findByText(/^Thank you. The office makes you an offer/)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: /^Approve: .*Drip for the shrubs/ }));
    expect(screen.getByRole('button', { name: 'Yes, I approve' })).toBeTruthy();
  });

  it('lets nobody approve what has no price yet, and says that it is on its way', async () => {
    const wanted = {
      id: 'w2',
      version: 1,
      from: 'work order',
      propertyName: 'Quail Commons',
      zoneName: null,
      kind: 'upgrade',
      what: 'New lines.',
      cost: null,
    };
    page({ more: { recommendations: [wanted] } });
    expect(await screen.findByRole('heading', { name: 'The office is preparing an offer for you' })).toBeTruthy();
    expect(screen.getByText(/^An offer is wanted: the office has not named its price yet/)).toBeTruthy();
    expect(screen.queryByRole('button', { name: /^(Approve|Ask for an offer):/ })).toBeNull();
  });

  it('says what an order says in the product’s own words in the reader’s language', async () => {
    const own = { id: 'w3', version: 2, from: 'work order', kind: 'mixed water needs', what: '', cost: 320, litres: null, money: null };
    page({ language: 'es', more: { recommendations: [{ ...own, propertyName: 'Quail Commons', zoneName: 'Entry beds' }] } });
    expect(
      await screen.findByText(/^Quail Commons, Entry beds: Dar líneas propias a las plantas con distintas necesidades\. Cuesta/),
    ).toBeTruthy();
  });
});
