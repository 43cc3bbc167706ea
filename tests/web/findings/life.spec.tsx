import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { WeekPage } from '../../../apps/web/src/features/findings/week/WeekPage.js';
import { PrecisionPage } from '../../../apps/web/src/features/findings/precision/PrecisionPage.js';
import { drawPage } from '../support/draw-page.js';
import { builtProperty, gallons } from '../support/built.js';
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

describe('a reading that was probably meant otherwise', () => {
  const swapped = {
    ...dear,
    kind: 'doubtful reading',
    says: { code: 'digits swapped', details: { nextRegister: 19_209, previousRegister: 18_900, likelyRegister: 19_029 } },
    evidence: { readingId: 'r2', nextRegister: 19_209, previousRegister: 18_900, likelyRegister: 19_029 },
  };
  const kept = { id: 'r2', register: 19_209, readAt: '2026-09-20T14:00:00Z', replacedById: null };
  const metered = (reading: object) =>
    builtProperty('p1', 'Quail Commons', { meters: [{ id: 'm1', name: 'Irrigation', readings: [{ ...kept, ...reading }] }] });
  const draw = (given: object = {}, reading: object = {}) =>
    page({
      at: '/findings/f1',
      more: {
        finding: { ...swapped, property: metered(reading), ...given },
        property: metered(reading),
        recordReading: { __typename: 'Reading', id: 'r3', judgement: 'ok', litresSinceLast: gallons(96_000) },
      },
    });

  it('is put right with one press, and stays on record', async () => {
    const { user, calls } = draw();
    await user.click(await screen.findByRole('button', { name: 'Keep 19,029 in place of 19,209' }));
    expect(await screen.findByText('Kept: fits, 96,000 gal since the last.')).toBeTruthy();
    expect(last(calls, 'RecordReadingAtDesk')).toMatchObject({
      input: {
        meterId: 'm1',
        register: 19_029,
        readAt: '2026-09-20T14:00:00Z',
        note: 'Read as 19,209; 19,029 was probably meant.',
        replacesId: 'r2',
      },
    });
  });

  it('is not offered where it has been put right or decided, or none was probably meant', async () => {
    for (const [given, reading] of [
      [{}, { replacedById: 'r3' }],
      [{ state: 'dismissed' }, {}],
      [{ evidence: { ...swapped.evidence, likelyRegister: null } }, {}],
    ] as const) {
      const { calls } = draw(given, reading);
      await article();
      if (reading.replacedById) await vi.waitFor(() => expect(last(calls, 'ReadingsOfFinding')).toBeTruthy());
      expect(screen.queryByRole('button', { name: /in place of/ })).toBeNull();
      cleanup();
    }
  });
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

  it('says that it waited, and that it was opened again though it is no longer seen', async () => {
    const waited = { isSilenced: false, acknowledgedBy: 'Ana', acknowledgedNote: 'new lawn', acknowledgedUntil: '2026-09-10' };
    page({ at: '/findings/f1', more: { finding: { ...dear, ...waited, clearedAt: '2026-09-20T07:00:00Z' } } });
    expect(await screen.findByText('It waited until Thursday 10 September, as Ana had said: new lawn')).toBeTruthy();
    expect(screen.getByText(/^No longer seen since Sun 20 Sep, .* It was opened again, and stays until somebody decides\.$/)).toBeTruthy();
    cleanup();
    page({ at: '/findings/f1', more: { finding: { ...dear, ...waited, state: 'resolved', clearedAt: '2026-09-20T07:00:00Z' } } });
    await article();
    expect(screen.queryByText(/No longer seen|It waited/)).toBeNull();
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
  const kind = { kind: 'unexplained use', decided: 4, ledToWork: 2, confirmed: 1, share: 0.75, isSeldomUseful: false };

  it('is told by kind and in one sentence', async () => {
    drawPage(<PrecisionPage />, { at: '/findings/usefulness', route: '/findings/usefulness', answers: { findingPrecision: [kind] } });
    expect(await screen.findByRole('heading', { name: '3 of 4 findings that were decided were worth a look' })).toBeTruthy();
    expect(screen.getByRole('row', { name: 'Unexplained use 4 2 1 75%' })).toBeTruthy();
  });

  it('marks a kind of which less than half was worth a look', async () => {
    const seldom = { kind: 'watered in rain', decided: 9, ledToWork: 2, confirmed: 1, share: 1 / 3, isSeldomUseful: true };
    drawPage(<PrecisionPage />, {
      at: '/findings/usefulness',
      route: '/findings/usefulness',
      answers: { findingPrecision: [kind, seldom] },
    });
    expect(await screen.findByRole('row', { name: /^Watered in rain ?Less than half: told last in the list 9 2 1 33%$/ })).toBeTruthy();
    expect(screen.getAllByText(/told last/)).toHaveLength(1);
  });

  it('says how to begin where nothing was decided', async () => {
    drawPage(<PrecisionPage />, { at: '/findings/usefulness', route: '/findings/usefulness', answers: { findingPrecision: [] } });
    expect(await screen.findByText('Nothing to count yet')).toBeTruthy();
  });
});

describe('what the week brought', () => {
  const property = { id: 'p1', name: 'Quail Commons', zones: [], meters: [], controllers: [] };
  const found = (id: string, kind: string) => ({
    ...{ id, kind, money: 40, litres: 37_854.12, fromOn: '2026-09-01', untilOn: '2026-09-23' },
    ...{ says: { code: kind, details: {} }, property },
  });
  const pace = (verdict: string) => ({ shortShare: 3.2, longShare: 1.6, verdict, through: '2026-09-23', property });
  const week = (given: object = {}) => ({
    ...{ from: '2026-09-18', through: '2026-09-24', stillWaiting: 2, stillWaitingMoney: 90, paces: [pace('act now')] },
    ...{ begun: [found('f1', 'unexplained use')], cameBack: [], ended: [found('f2', 'steady flow')], ...given },
  });
  const draw = (given: object = {}) =>
    drawPage(<WeekPage />, {
      at: '/findings/week',
      route: '/findings/week',
      answers: { findingsWeek: week(given), findingPrecision: [{ kind: 'steady flow', isSeldomUseful: true }] },
    });

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
    // Water and money with the time they are of; what was seldom worth a look here is marked.
    expect(screen.getAllByText('About 10,000 gal and $40 a month.')).toHaveLength(2);
    expect(screen.getByText('Seldom worth a look here').closest('tr')?.textContent).toMatch(/^Steady flow/);
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
