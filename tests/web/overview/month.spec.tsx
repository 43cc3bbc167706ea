import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { MonthPage } from '../../../apps/web/src/features/overview/month/MonthPage.js';
import { builtAccount, builtFinding, builtProperty, builtWorkOrder } from '../support/built.js';
import { drawPage } from '../support/draw-page.js';

afterEach(cleanup);

const row = (id: string, name: string, given: object = {}) => ({
  property: builtProperty(id, name),
  account: builtAccount(`a-${id}`, { allowed: 10_000, needed: 9000, programmed: 9500, metered: 9600 }),
  topFinding: null,
  findingCount: 0,
  whoIsOnIt: null,
  why: { code: 'within-what-can-be-measured', details: {} },
  ...given,
});
const rows = [
  row('p1', 'Quail Commons', { topFinding: builtFinding('f1', 'stale'), findingCount: 1 }),
  row('p2', 'Old Mill Shops', { topFinding: builtFinding('f2', 'stale', { state: 'in work' }), findingCount: 1 }),
  row('p3', 'Depot Green', { account: builtAccount('a3', { allowed: 10_000 }) }),
];
const sums = {
  properties: 3,
  overProperties: 0,
  aboveNeedLitres: 0,
  aboveNeedMoney: null,
  settingsLitres: 0,
  unexplainedLitres: 0,
  unsplitLitres: 0,
  underProperties: 0,
  notCounted: 1,
};
const board = {
  month: '2026-09',
  properties: 3,
  readingsIn: 2,
  accountsComputed: 2,
  findingsOpen: 2,
  findingsDecided: 5,
  workGivenOut: 1,
  workDone: 3,
  workWaitingForApproval: 1,
};
const answers = {
  monthBoard: board,
  portfolio: { month: '2026-09', months: ['2026-08', '2026-09'], through: '2026-09-24', total: 3, next: null, rows, sums },
  findings: [builtFinding('f1', 'stale', { money: null }), builtFinding('f9', 'steady flow', { money: 327 })],
  workOrders: [
    builtWorkOrder('w1', 'adjust', { property: builtProperty('p1', 'Quail Commons') }),
    builtWorkOrder('w2', 'repair', { state: 'given out', day: '2026-09-28', property: builtProperty('p2', 'Old Mill Shops') }),
  ],
  waterReports: [
    { id: 'r1', version: 1, clientId: 'c1', fromOn: '2026-09-01', untilOn: '2026-09-30', state: 'draft' },
    { id: 'r2', version: 1, clientId: 'c1', fromOn: '2026-08-01', untilOn: '2026-08-31', state: 'sent' },
  ],
};
const step = (name: string) => within(screen.getByRole('heading', { name }).closest('li') as HTMLElement);
const cells = (name: string) =>
  [...(screen.getByRole('heading', { name }).closest('li')?.querySelectorAll('[data-cell]') ?? [])].map((each) =>
    each.getAttribute('data-cell'),
  );

describe('the month', () => {
  it('names no account where none is missing, and of a month that is over only findings that had begun by then', async () => {
    const findings = [
      builtFinding('f1', 'stale', { money: 12, fromOn: '2026-08-20' }),
      builtFinding('f9', 'steady flow', { money: 327, fromOn: '2026-09-02' }),
    ];
    const august = { ...board, month: '2026-08', accountsComputed: 3, findingsOpen: 1 };
    drawPage(<MonthPage />, { answers: { ...answers, findings, monthBoard: august } });
    await screen.findByRole('heading', { level: 1, name: 'August 2026: one finding waits for a decision' });
    expect(step('Findings decided').getByText(/One finding is open, about \$12/)).toBeTruthy();
    expect(screen.getAllByRole('heading', { level: 2 })).toHaveLength(6);
  });

  it('says how far it is, and each count opens its list', async () => {
    drawPage(<MonthPage />, { answers });
    await screen.findByRole('heading', { level: 1, name: 'September 2026: 2 findings wait for a decision, one property for an account' });
    const links = ['Readings in', 'Findings decided', 'Work given out', 'Work done'].map((name) => {
      const [link] = step(name).getAllByRole('link');
      return [link?.textContent, link?.getAttribute('href')];
    });
    expect(links).toEqual([
      ['2 of 3', '/?why=not+counted&month=2026-09'],
      ['5 of 7', '/findings'],
      ['4 of 5', '/findings?state=in+work'],
      ['3 of 4', '/routes'],
    ]);
    expect(step('Reports sent').getByText('of 1').textContent).toBe('0 of 1');
  });

  it('has a mark for each property, in the same order in every row, and names what holds it up', async () => {
    drawPage(<MonthPage />, { answers });
    await screen.findByRole('heading', { level: 1 });
    expect(cells('Readings in')).toEqual(['done', 'done', 'stuck']);
    expect(cells('Findings decided')).toEqual(['waits', 'done', 'nothing']);
    expect(cells('Work given out')).toEqual(['waits', 'done', 'nothing']);
    expect(step('Readings in').getByRole('link', { name: 'Depot Green' }).getAttribute('href')).toBe('/properties/p3?month=2026-09');
    expect(step('Findings decided').getByRole('link', { name: 'Start with the dearest' }).getAttribute('href')).toBe('/findings/f9');
    expect(step('Findings decided').getByText(/2 findings are open, about \$327/)).toBeTruthy();
    expect(step('Work given out').getByText(/One repair waits for approval/)).toBeTruthy();
    expect(step('Reports sent').getByText('One draft waits.')).toBeTruthy();
    expect(screen.getByRole('img', { name: 'September 2026, day by day; today is Thursday 24 September.' })).toBeTruthy();
  });

  it('keeps the month in the address', async () => {
    const { user, address, calls } = drawPage(<MonthPage />, { answers, at: '/month?month=2026-08' });
    await screen.findByRole('heading', { level: 1 });
    expect(calls[0]?.variables).toEqual({ month: '2026-08' });
    await user.selectOptions(screen.getByLabelText('Month'), 'August 2026');
    expect(address()).toBe('/month?month=2026-08');
  });

  it('has one thing to do where no property is on record, and says nothing of properties that are not there', async () => {
    drawPage(<MonthPage />, { answers: { ...answers, monthBoard: { ...board, properties: 0 } } });
    await screen.findByRole('heading', { level: 1, name: 'No properties yet' });
    expect(screen.getByRole('link', { name: 'Bring your properties in' }).getAttribute('href')).toBe('/setup');
    expect(screen.queryByText('Every account could be computed.')).toBeNull();
  });

  it('speaks Spanish', async () => {
    drawPage(<MonthPage />, { answers, language: 'es' });
    await screen.findByRole('heading', {
      level: 1,
      name: 'Septiembre de 2026: 2 hallazgos esperan una decisión, una propiedad una cuenta',
    });
  });
});
