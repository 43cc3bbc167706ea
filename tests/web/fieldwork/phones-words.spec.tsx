import { cleanup, screen, waitFor } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { PhonesPage } from '../../../apps/web/src/features/fieldwork/phones/PhonesPage.js';
import { builtProperty } from '../support/built.js';
import { drawPage } from '../support/draw-page.js';

// Nothing that a phone said is hidden from the office, whatever became of it.

afterEach(cleanup);

const said = (key: string, kind: string, body: unknown, given: object = {}) => ({
  ...{ key, kind, verdict: 'refused', by: 'Inés Caldera', phone: 'Android 14 · 3F7A', other: null, stands: null, subject: null },
  ...{ savedAt: '2026-09-24T16:10:00Z', receivedAt: '2026-09-24T16:20:00Z', problem: null },
  body: typeof body === 'string' ? body : JSON.stringify(body),
  property: builtProperty('p1', 'Quail Commons'),
  ...given,
});
const page = (operations: readonly object[], answers: object = {}) =>
  drawPage(<PhonesPage />, {
    at: '/routes/phones',
    route: '/routes/phones',
    answers: { devices: [], openOperations: operations, ...answers },
  });
const variables = (calls: readonly { name: string; variables: object }[], name: string) =>
  calls.find((call) => call.name === name)?.variables;
const shown = () => [...document.querySelectorAll('dl.all-said > div')].map((line) => [...line.children].map((each) => each.textContent));

describe('what was refused', () => {
  it('is shown with all that it says', async () => {
    page([
      said('k1', 'note-zone', { visitId: 'v', zoneId: 'z', kind: 'leak', count: 3, word: 'By the gate', repaired: true }),
      said('k2', 'close-visit', {
        visitId: 'v',
        doneNote: 'Valve',
        workedMinutes: 40,
        materials: [{ name: 'Nozzle', count: 2, unit: null }],
      }),
      said('k3', 'catch-test', { visitId: 'v', zoneId: 'z', minutes: 10, catchesMl: [20, 30.5], mouthM2: 0.01 }),
    ]);
    await screen.findByRole('heading', { level: 3, name: /Seen in a zone/ });
    expect(shown()).toEqual([
      ['What', 'Leak'],
      ['How many', '3'],
      ['In words', 'By the gate'],
      ['Repaired on the spot', 'yes'],
      ['Done', 'Valve'],
      ['Minutes of work', '40'],
      ['Materials', '2 Nozzle'],
      ['Minutes', '10'],
      ['Caught in each can [mL]', '20, 30.5'],
      ['mouthM2', '0.01'],
    ]);
  });

  it('is shown as it came where it cannot be read', async () => {
    page([said('k1', 'arrive', '{"stopId":')]);
    expect(await screen.findByText('{"stopId":')).toBeTruthy();
  });

  it('is taken in by the office, or says that it still cannot be done', async () => {
    const { user, calls } = page([said('k1', 'reading', { register: 7 })], {
      takeInOperation: { ...said('k1', 'reading', {}), verdict: 'applied' },
    });
    await user.click(await screen.findByRole('button', { name: 'Take it in' }));
    await waitFor(() => expect(variables(calls, 'TakeInOperation')).toEqual({ key: 'k1' }));
    expect(await screen.findByText('Taken in.')).toBeTruthy();
  });
});

it('shows both notes of an order that was done twice, and what ran beside another change', async () => {
  page([
    said(
      'k1',
      'end-order',
      { workOrderId: 'w', done: true, note: 'Decoder too' },
      { verdict: 'conflict', other: { doneNote: 'Nozzles', by: 'Marisol Vance' } },
    ),
    said(
      'k2',
      'end-order',
      { workOrderId: 'w', done: false, note: 'No key' },
      { verdict: 'parallel', other: { changedBy: 'Marisol Vance' } },
    ),
  ]);
  const table = await screen.findByRole('table', { name: 'What each said' });
  expect([...table.querySelectorAll('tbody tr')].map((row) => row.textContent)).toEqual(['NoteDecoder tooNozzles']);
  expect(screen.getByText(/when Marisol Vance had changed something else of the same meanwhile/)).toBeTruthy();
  expect(shown()).toEqual([
    ['Done', 'no'],
    ['Note', 'No key'],
  ]);
});

it('shows beside what a phone said of an order what the office decided meanwhile, and who it was', async () => {
  page([
    said(
      'k1',
      'end-order',
      { workOrderId: 'w', done: true, note: null },
      { verdict: 'conflict', other: { state: 'dropped', note: 'Sold', by: 'Marisol Vance', phone: null, savedAt: '2026-09-24T16:00:00Z' } },
    ),
  ]);
  const table = await screen.findByRole('table', { name: 'What each said' });
  expect([...table.querySelectorAll('tbody tr')].map((row) => [...row.children].map((cell) => cell.textContent))).toEqual([
    ['Note', '–', 'Sold'],
    ['State', 'done', 'dropped'],
  ]);
  expect(screen.getByText(/^Inés Caldera .* and Marisol Vance \(.*\d:00.*\) said different things/)).toBeTruthy();
});

it('tells two words of one person apart by the phone and the time, in the sentence, the table and on the buttons', async () => {
  const other = { count: 4, word: null, repaired: false, by: 'Inés Caldera' };
  const told = { isSelf: true, phone: 'Android 14 · 9B21', savedAt: '2026-09-24T16:25:00Z' };
  page([
    said('k1', 'note-zone', { zoneId: 'z', kind: 'leak', count: 1 }, { verdict: 'conflict', other: { ...other, ...told }, stands: 'sent' }),
  ]);
  const first = /Inés Caldera \(phone Android 14 · 3F7A, [^)]*\d:10[^)]*\)/;
  const second = /Inés Caldera \(phone Android 14 · 9B21, [^)]*\d:25[^)]*\)/;
  const sentence = await screen.findByText(/said different things/);
  expect(sentence.textContent).toMatch(new RegExp(`^${first.source} and ${second.source} said different things`));
  expect(screen.getByRole('button', { name: new RegExp(`^Leave it as ${first.source}`) })).toBeTruthy();
  expect(screen.getByRole('button', { name: new RegExp(`^Take what ${second.source}`) })).toBeTruthy();
  const heads = screen.getAllByRole('columnheader').map(({ textContent }) => textContent);
  expect(heads).toEqual(['What differs', expect.stringMatching(first), expect.stringMatching(second)]);
});

it('takes a phone that was lost off the list, and offers it only for one that nobody hears', async () => {
  const device = (id: string, silentDays: number) => ({
    ...{ id, name: `Phone ${id}`, person: 'Dell Okafor', appVersion: 'test', heardAt: '2026-09-20T16:00:00Z', silentDays },
    ...{ waiting: 1, photosWaiting: 0, refused: 0, oldestWaitingAt: null },
  });
  const { user, calls } = page([], { devices: [device('d1', 0), device('d2', 9)], forgetDevice: [device('d1', 0)] });
  const buttons = await screen.findAllByRole('button', { name: 'Lost or given back: take it off the list' });
  expect(buttons).toHaveLength(1);
  await user.click(buttons[0]!);
  await waitFor(() => expect(variables(calls, 'ForgetDevice')).toEqual({ id: 'd2' }));
});
