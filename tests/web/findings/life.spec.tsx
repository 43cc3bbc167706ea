import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { WeekPage } from '../../../apps/web/src/features/findings/week/WeekPage.js';
import { PrecisionPage } from '../../../apps/web/src/features/findings/precision/PrecisionPage.js';
import { drawPage } from '../support/draw-page.js';
import { gallons } from '../support/built.js';
import { article, dear, last, page } from './drawn-findings.js';

afterEach(cleanup);

/** A day in which a litre leaks each hour, of which one is not known, and a program ran from 4 to 5. */
const leaking = (date: string, given: object = {}) => ({
  date,
  clock: Array.from({ length: 24 }, (_, hour) => hour),
  hours: Array.from({ length: 24 }, (_, hour) => gallons(hour === 4 ? 300 : 20)),
  rainMm: 0,
  isProgrammedKnown: true,
  windows: [{ controllerId: 'c1', program: 'A', fromMinute: 240, untilMinute: 300 }],
  ...given,
});

describe('a finding that can wait', () => {
  it('is silent until a day with s and a note, and refuses a day that is over or no words', async () => {
    const { user, calls } = page({
      at: '/findings/f1',
      more: { acknowledgeFinding: { __typename: 'Finding', ...dear, version: 2, isSilenced: true } },
    });
    await article();
    await user.keyboard('s');
    const dialog = within(screen.getByRole('dialog', { name: 'Can it wait?' }));
    await user.type(dialog.getByLabelText('Silent until'), '2026-09-01');
    await user.click(dialog.getByRole('button', { name: 'Let it wait' }));
    expect(dialog.getByText(/Choose today or a later day/)).toBeTruthy();
    expect(dialog.getByText(/Say in a few words why it can wait/)).toBeTruthy();
    expect(calls.some(({ name }) => name === 'AcknowledgeFinding')).toBe(false);
    await user.click(dialog.getByRole('radio', { name: 'Until it clears' }));
    await user.type(dialog.getByLabelText('Why it can wait'), 'the pool is being filled');
    await user.click(dialog.getByRole('button', { name: 'Let it wait' }));
    expect(await screen.findByText('Silent until it clears.')).toBeTruthy();
    expect(last(calls, 'AcknowledgeFinding')).toEqual({ id: 'f1', version: 1, until: null, note: 'the pool is being filled' });
  });

  it('stands in a list of its own, with who said so, and not among those to decide', async () => {
    const waits = { isSilenced: true, acknowledgedBy: 'Ana', acknowledgedNote: 'new lawn', acknowledgedUntil: '2026-10-05' };
    const { calls } = page({ at: '/findings/f1?state=waiting', more: { finding: { ...dear, ...waits } } });
    expect(await screen.findByText(/It can wait, says Ana: new lawn Silent until Monday 5 October, then told again/)).toBeTruthy();
    expect(last(calls, 'Findings')).toEqual({ state: ['open', 'in work'], silenced: true, kind: null });
    cleanup();
    const open = page({ at: '/findings' });
    await article();
    expect(last(open.calls, 'Findings')).toEqual({ state: ['open'], silenced: false, kind: null });
  });

  it('says what it was before more was known', async () => {
    page({ at: '/findings/f1', more: { finding: { ...dear, history: [{ kind: 'unexplained use', at: '2026-09-02T15:00:00Z' }] } } });
    expect(await screen.findByText(/Told as unexplained use since Wed 2 Sep, 8:00 am/)).toBeTruthy();
  });
});

describe('the hours of a finding', () => {
  const strip = (days: readonly object[]) => ({ meterId: 'm1', smallestSeenLPerMin: gallons(0.15), days });

  it('are bars over what was programmed, with the least hour, the day and the rain in figures', async () => {
    const gap = leaking('2026-09-24', { hours: Array.from({ length: 24 }, (_, hour) => (hour === 9 ? null : 0)), rainMm: null });
    page({ at: '/findings/f1', more: { finding: { ...dear, usageStrip: strip([leaking('2026-09-23'), gap]) } } });
    const table = await screen.findByRole('table', { name: 'Hour by hour' });
    const [, first, second] = within(table).getAllByRole('row');
    const figures = within(first!)
      .getAllByRole('cell')
      .map(({ textContent }) => textContent);
    // 23 hours of 20 gallons and one of 300
    expect(figures).toEqual(['Wed 23 Sep', '20.0', '760.0', '0']);
    expect(first!.querySelectorAll('[data-hour="water"]')).toHaveLength(24);
    expect(first!.querySelectorAll('[data-window="A"]')).toHaveLength(1);
    expect(second!.querySelectorAll('[data-hour="water"]')).toHaveLength(0);
    expect(second!.querySelectorAll('[data-hour="unknown"]')).toHaveLength(1);
    expect(screen.getByText(/A steady flow below 0\.15 gpm cannot be seen by this meter/)).toBeTruthy();
  });

  it('are the newest two weeks until all are asked for, and nothing where there is no feed', async () => {
    const days = Array.from({ length: 20 }, (_, at) => leaking(`2026-09-${String(at + 4).padStart(2, '0')}`));
    const { user } = page({ at: '/findings/f1', more: { finding: { ...dear, usageStrip: strip(days) } } });
    expect(within(await screen.findByRole('table', { name: 'Hour by hour' })).getAllByRole('row')).toHaveLength(1 + 14);
    await user.click(screen.getByRole('button', { name: 'Show all 20 days' }));
    expect(within(screen.getByRole('table', { name: 'Hour by hour' })).getAllByRole('row')).toHaveLength(1 + 20);
    cleanup();
    page({ at: '/findings/f1' });
    await article();
    expect(screen.queryByRole('table', { name: 'Hour by hour' })).toBeNull();
  });
});

describe('how useful findings have been', () => {
  const kind = { kind: 'unexplained use', decided: 4, ledToWork: 2, confirmed: 1, share: 0.75 };

  it('is told by kind and in one sentence', async () => {
    drawPage(<PrecisionPage />, { at: '/findings/usefulness', route: '/findings/usefulness', answers: { findingPrecision: [kind] } });
    expect(await screen.findByRole('heading', { name: '3 of 4 findings that were decided were worth a look' })).toBeTruthy();
    expect(screen.getByRole('row', { name: 'Unexplained use 4 2 1 75%' })).toBeTruthy();
  });

  it('says how to begin where nothing was decided', async () => {
    drawPage(<PrecisionPage />, { at: '/findings/usefulness', route: '/findings/usefulness', answers: { findingPrecision: [] } });
    expect(await screen.findByText('Nothing to count yet')).toBeTruthy();
  });
});

describe('what the week brought', () => {
  const property = { id: 'p1', name: 'Quail Commons', zones: [], meters: [], controllers: [] };
  const found = (id: string, kind: string) => ({ id, kind, money: 40, says: { code: kind, details: {} }, property });
  const pace = (verdict: string) => ({ shortShare: 3.2, longShare: 1.6, verdict, through: '2026-09-23', property });
  const week = (given: object = {}) => ({
    ...{ from: '2026-09-18', through: '2026-09-24', stillWaiting: 2, stillWaitingMoney: 90, paces: [pace('act now')] },
    ...{ begun: [found('f1', 'unexplained use')], cameBack: [], ended: [found('f2', 'steady flow')], ...given },
  });
  const draw = (given: object = {}) =>
    drawPage(<WeekPage />, { at: '/findings/week', route: '/findings/week', answers: { findingsWeek: week(given) } });

  it('says first where somebody has to go now, then what is new and what ended', async () => {
    draw();
    expect((await screen.findByRole('heading', { level: 1 })).textContent).toBe('One new finding this week, one ended');
    expect(screen.getByText('2 older findings wait for a decision, about $90.')).toBeTruthy();
    expect(screen.getAllByRole('heading', { level: 2 }).map((heading) => heading.textContent)).toEqual([
      'One property needs somebody now',
      'One is new',
      'One ended',
    ]);
    expect(screen.getByRole('row', { name: /Quail Commons to Wed 23 Sep 320% 160% Send somebody now/ })).toBeTruthy();
    expect(screen.getByRole('link', { name: 'Unexplained use' }).getAttribute('href')).toBe('/findings/f1');
  });

  it('is calm where nothing was found', async () => {
    draw({ begun: [], ended: [], stillWaiting: 0, stillWaitingMoney: null, paces: [] });
    expect((await screen.findByRole('heading', { level: 1 })).textContent).toBe('Nothing new was found this week');
    expect(screen.getByText('Nothing older waits for a decision.')).toBeTruthy();
    expect(screen.queryByRole('table')).toBeNull();
    cleanup();
    draw({ paces: [pace('watch')] });
    expect(await screen.findByRole('heading', { name: 'One property uses more than allowed' })).toBeTruthy();
  });
});
