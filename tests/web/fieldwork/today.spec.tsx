import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Phone } from '../../../apps/web/src/offline/phone.js';
import { afterEvent, EMPTY, isWriting } from '../../../apps/web/src/offline/outbox.js';
import { dayEnd } from '../../../apps/web/src/features/fieldwork/today/day-end.js';
import { TodayPage } from '../../../apps/web/src/features/fieldwork/today/TodayPage.js';
import { builtCrew } from '../support/built.js';
import { viewerOf } from '../support/draw-page.js';
import { drawAtPhone, freshPhone } from './at-phone.js';
import { builtStop, builtVisit, order, property } from './built-stop.js';

beforeEach(freshPhone);
afterEach(cleanup);

const routeOf = (stop: Record<string, unknown>) => stop['route'];
const crews = [builtCrew('crew-1', 'Crew 1'), builtCrew('crew-2', 'Crew 2')];
const crewLead = viewerOf({ role: 'crewLead', permissions: ['read routes', 'record fieldwork', 'assign work'], crewIds: ['crew-1'] });

const page = (given: { today?: unknown; language?: 'en' | 'es'; crews?: unknown; viewer?: typeof crewLead } = {}) =>
  drawAtPhone(<TodayPage />, {
    at: '/today',
    route: '/today',
    viewer: given.viewer ?? crewLead,
    ...(given.language ? { language: given.language } : {}),
    answers: { stop: builtStop(), today: given.today ?? [routeOf(builtStop())], crews: given.crews ?? crews.slice(0, 1) },
  });

describe('today', () => {
  it('lists the stops in order: the property, where it is, and what to do', async () => {
    page();
    expect((await screen.findByRole('heading', { level: 1 })).textContent).toBe('2 stops to go');
    const stops = within(screen.getByRole('list', { name: 'Crew 1' })).getAllByRole('listitem');
    expect(stops.map((stop) => within(stop).getByRole('link').getAttribute('href'))).toEqual(['/today/st1', '/today/st2']);
    expect(stops[0]?.textContent).toContain('Quail Commons');
    expect(stops[0]?.textContent).toContain('14 Larch Way, Fennel Hollow');
    expect(stops[0]?.textContent).toContain('Adjust: Set program B as planned');
    expect(stops[0]?.textContent).toContain('about 45 min');
    expect(stops[1]?.textContent).toContain('No work order');
  });

  it('counts what is left, and says when a stop was closed', async () => {
    page({ today: [routeOf(builtStop({ visit: builtVisit({ closedAt: '2026-09-24T17:46:00Z' }) }))], language: 'es' });
    expect((await screen.findByRole('heading', { level: 1 })).textContent).toBe('Falta una parada de 2');
    expect(screen.getByText(/Cerrada a las 10:46/)).toBeTruthy();
  });

  it('keeps the day in the address, and asks for that day', async () => {
    const { user, calls, address } = page();
    await user.click(await screen.findByRole('button', { name: 'Day after' }));
    expect(address()).toBe('/today?day=2026-09-25');
    await screen.findByText('Friday 25 September');
    expect(calls.filter(({ name }) => name === 'Today').at(-1)?.variables).toEqual({ day: '2026-09-25', crewId: null });
  });

  it('lets the office choose a crew', async () => {
    const { user, calls } = page({ crews, viewer: viewerOf() });
    await user.selectOptions(await screen.findByLabelText('Crew'), 'Crew 2');
    expect(calls.filter(({ name }) => name === 'Today').at(-1)?.variables).toEqual({ day: '2026-09-24', crewId: 'crew-2' });
  });

  it('says how an empty day is filled', async () => {
    page({ today: [] });
    expect((await screen.findByRole('heading', { level: 1 })).textContent).toBe('No stops today');
    expect(screen.getByText(/Give work orders to a crew and a day under Routes/)).toBeTruthy();
  });
});

describe('the day’s end', () => {
  const found = (id: string, kind: string, litres: number | null) => ({
    ...{ id, version: 1, kind, state: 'resolved', cameBack: 0, openedAt: '2026-09-01T15:00:00Z', litres, property, workOrders: [] },
    says: { code: 'stale', details: {} },
  });
  const over = found('f1', 'over-programmed', 37_854.11784);
  const workOrders = [
    { ...order, id: 'w1', state: 'done', finding: over },
    { ...order, id: 'w2', state: 'done', finding: over },
    { ...order, id: 'w3', state: 'done', finding: found('f2', 'under-programmed', 5000) },
    { ...order, id: 'w4', state: 'open', leftNote: 'No key', finding: found('f3', 'steady flow', 90_000) },
  ];

  it('says what was done, what is left, and the water of what was done, each finding once and thirst never', async () => {
    const visit = builtVisit({ closedAt: '2026-09-24T17:46:00Z', workedMinutes: 90 });
    page({ today: [routeOf(builtStop({ visit, workOrders }))] });
    expect(await screen.findByRole('heading', { name: 'The day so far' })).toBeTruthy();
    expect(screen.getByText('Stops closed: 1 of 2; 3 orders done, 1 h 30 min of work.')).toBeTruthy();
    expect(screen.getByText('One order is not done.')).toBeTruthy();
    // 37,854.11784 L are 10,000 gal (231 cubic inches each, exact).
    expect(screen.getByText(/if it holds, that much does not run again/).textContent).toContain('10,000 gal');
  });

  it('counts the water of a finding once, however many copies of it the phone holds', () => {
    const leak = () => ({ id: 'f1', kind: 'steady flow', litres: 4000 });
    const done = { state: 'done' };
    expect(dayEnd([{ workOrders: [{ ...done, finding: leak() }] }, { workOrders: [{ ...done, finding: leak() }] }]).litres).toBe(4000);
  });

  it('says nothing before a stop is closed', async () => {
    page({ today: [routeOf(builtStop({ visit: builtVisit(), workOrders }))] });
    await screen.findByRole('heading', { level: 1 });
    expect(screen.queryByText(/Stops closed/)).toBeNull();
  });
});

it('says that the phone is full before anybody types', async () => {
  const estimate = () => Promise.resolve({ usage: 995_000_000, quota: 1_000_000_000 });
  Object.defineProperty(navigator, 'storage', { configurable: true, value: { estimate, persist: () => Promise.resolve(false) } });
  try {
    page();
    expect(await screen.findByText(/The phone is full: photos cannot be taken/)).toBeTruthy();
  } finally {
    Object.defineProperty(navigator, 'storage', { configurable: true, value: undefined });
  }
});

it('a form that was left days ago holds up no newer version, one of today does', () => {
  const at = '2026-09-24T17:43:00Z';
  const typed = afterEvent(EMPTY, { type: 'typed', draft: 'done.st1', value: { doneNote: 'Set' }, at });
  expect(isWriting(typed, new Date('2026-09-25T17:43:00Z'))).toBe(true);
  expect(isWriting(typed, new Date('2026-09-27T17:43:00Z'))).toBe(false);
  const cleared = afterEvent(typed, { type: 'cleared', draft: 'done.st1' });
  expect([isWriting(cleared, new Date(at)), cleared.typedAt]).toEqual([false, {}]);
});

it('a phone that is full opens all the same, shows what is on it, and goes on when there is room again', async () => {
  const given = { now: () => new Date('2026-09-24T17:43:00Z') };
  const said = { kind: 'arrive', payloadVersion: 1, body: '{}', subject: 'arrive st1', words: 'your arrival' };
  const before = await Phone.open('full', given);
  const { key } = await before.save(said);
  await before.happen({ type: 'sending', keys: [key] });
  before.close();
  const { put } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.put = () => {
    throw new DOMException('no room', 'QuotaExceededError');
  };
  const full = await Phone.open('full', given).finally(() => {
    IDBObjectStore.prototype.put = put;
  });
  expect(full.outbox.operations).toMatchObject([{ key, state: 'queued', hasLeft: true }]);
  expect(full.trouble).not.toBeNull();
  await full.happen({ type: 'typed', draft: 'done.st1', value: 'Set', at: '2026-09-24T17:44:00Z' });
  expect(full.trouble).toBeNull();
  full.close();
  const again = await Phone.open('full', given);
  expect(again.outbox.operations).toMatchObject([{ key, state: 'queued' }]);
  again.close();
});
