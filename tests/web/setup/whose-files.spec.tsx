import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { SetupPage } from '../../../apps/web/src/features/setup/frame/SetupPage.js';
import { drawPage } from '../support/draw-page.js';
import { ownerOf } from './owner.js';

const owned = (name: string, recognized: object, given: object = {}) => ({
  name,
  file: 'weather',
  recognized: { station: null, asksWindHeight: false, windHeightM: null, property: null, meter: null, ...recognized },
  rejectedAs: null,
  status: 'refused',
  new: 0,
  changed: 0,
  same: 0,
  wrong: 0,
  notices: [],
  problems: [],
  noticesTotal: 0,
  problemsTotal: 0,
  ...given,
});
const station = { layout: 'coded-daily', belongsTo: 'station', asksWindHeight: true };
const checked = {
  id: 'up-1',
  files: [
    owned('lake.csv', station, {
      problems: [{ file: 'lake.csv', line: null, column: null, code: 'STATION_NOT_CHOSEN', found: '', expected: '', says: 'Say which.' }],
      problemsTotal: 1,
    }),
    owned('grid.csv', { layout: 'gridmet', belongsTo: 'station', station: 'New Lake', windHeightM: 10 }),
    owned('pond.csv', { ...station, station: 'Wet Lake', windHeightM: 10 }),
    owned('feed.xml', { layout: 'espi', belongsTo: 'meter' }, { file: 'usage' }),
  ],
  ignored: [],
  problemsTotal: 3,
  rows: 0,
};
const after = {
  ...checked,
  files: [owned('lake.csv', { ...station, station: 'Dry Lake', windHeightM: 3.048 }, { status: 'read', new: 3 })],
};

let sent: { address: string; method: string; body: unknown }[] = [];
beforeEach(() => {
  sent = [];
  vi.stubGlobal('fetch', async (address: string, { method = 'GET', body }: { method?: string; body?: string } = {}) => {
    sent.push({ address, method, body: body === undefined ? null : JSON.parse(body) });
    return Response.json(method === 'POST' ? after : checked);
  });
});
afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

const meter = (name: string) => ({ id: name, name, retiredAt: null });
const draw = (language: 'en' | 'es' = 'en') =>
  drawPage(<SetupPage />, {
    route: '/setup/*',
    at: '/setup?import=up-1',
    viewer: ownerOf(),
    language,
    answers: {
      weatherStations: [
        { id: 's1', name: 'Dry Lake', retiredAt: null },
        { id: 's2', name: 'Wet Lake', retiredAt: null },
        { id: 's3', name: 'Old Lake', retiredAt: '2020-01-01T00:00:00Z' },
      ],
      properties: [
        { id: 'p1', name: 'Elm', meters: [meter('M1'), meter('M2')] },
        { id: 'p2', name: 'Oak', meters: [] },
      ],
      job: null,
    },
  });

const options = (of: HTMLElement): (string | null)[] =>
  within(of)
    .getAllByRole('option')
    .map(({ textContent }) => textContent);

it('asks whose files they are, has what is plain chosen, and has them checked again', async () => {
  const { user } = draw();
  const lake = await screen.findByRole('group', { name: /^lake.csv days of a weather network/ });
  expect(screen.getByRole('heading', { level: 1, name: 'One file waits for an answer before its rows can be read' })).toBeDefined();
  const stations = within(lake).getByRole('combobox', { name: 'Weather station' });
  expect(options(stations)).toEqual(['Choose', 'Dry Lake', 'Wet Lake']);
  await user.selectOptions(stations, 'Dry Lake');
  await user.type(within(lake).getByRole('textbox', { name: 'Height of its wind gauge' }), '10');

  const grid = screen.getByRole('group', { name: /^grid.csv/ });
  expect(within(grid).getByRole<HTMLSelectElement>('combobox', { name: 'Weather station' }).value).toBe('New Lake');
  expect(within(grid).queryByRole('textbox')).toBeNull();
  const pond = screen.getByRole('group', { name: /^pond.csv/ });
  expect(within(pond).getByRole<HTMLSelectElement>('combobox', { name: 'Weather station' }).value).toBe('Wet Lake');
  expect(within(pond).getByRole<HTMLInputElement>('textbox', { name: 'Height of its wind gauge' }).value).toBe('33');

  const feed = screen.getByRole('group', { name: /^feed.xml a meter’s feed/ });
  expect(within(feed).queryByRole('textbox')).toBeNull();
  expect(options(within(feed).getByRole('combobox', { name: 'Property' }))).toEqual(['Choose', 'Elm']);
  await user.selectOptions(within(feed).getByRole('combobox', { name: 'Property' }), 'Elm');
  await user.selectOptions(within(feed).getByRole('combobox', { name: 'Meter' }), 'M2');

  await user.click(screen.getByRole('button', { name: 'Check again with this' }));
  expect(await screen.findByRole('heading', { level: 1, name: /^3 new rows/ })).toBeDefined();
  expect(sent.at(-1)).toEqual({
    address: '/api/imports/up-1/meanings',
    method: 'POST',
    body: {
      files: {
        'lake.csv': { station: 'Dry Lake', windHeightM: 3.048 },
        'grid.csv': { station: 'New Lake' },
        // What is shown in whole feet goes back as it came.
        'pond.csv': { station: 'Wet Lake', windHeightM: 10 },
        'feed.xml': { property: 'Elm', meter: 'M2' },
      },
    },
  });
});

it('tells of files that wait for an answer that they wait: neither wrong nor nothing, and not what the first button brings in', async () => {
  const asked = (name: string) =>
    owned(name, station, {
      problems: ['STATION_NOT_CHOSEN', 'WIND_HEIGHT_NOT_STATED'].map((code) => ({
        file: name,
        line: null,
        column: null,
        code,
        found: '',
        expected: '',
        says: 'Say it.',
      })),
      problemsTotal: 2,
    });
  const meters = { name: 'meters.csv', file: 'meters', recognized: null, status: 'read', new: 1 };
  const upload = { ...checked, files: [owned('', {}, meters), asked('lake.csv'), asked('pond.csv')], problemsTotal: 4 };
  vi.stubGlobal('fetch', async () => Response.json(upload));
  draw();
  const head = await screen.findByRole('heading', { level: 1 });
  expect(head.textContent).toBe('1 new row, none changed, none wrong; 2 files wait for an answer');
  expect(screen.queryByText(/wrong\./)).toBeNull();
  expect(screen.getByText(/2 files wait for the answers asked below; what is imported now comes in without them\./)).toBeDefined();
  const table = screen.getByRole('table', { name: 'What each file would change' });
  const cells = within(table)
    .getAllByRole('row')
    .slice(1)
    .map((row) =>
      within(row)
        .getAllByRole('cell')
        .slice(1)
        .map(({ textContent }) => textContent),
    );
  expect(cells).toEqual([['1', '0', '0', '0'], ['waits for an answer'], ['waits for an answer']]);
  const again = await screen.findByRole('button', { name: 'Check again with this' });
  expect(screen.getByRole('button', { name: 'Import only the other files: 1 row' }).className).not.toBe(again.className);
  expect(again.className).toMatch(/main/);
});

it('speaks Spanish', async () => {
  draw('es');
  expect(await screen.findByRole('group', { name: /^feed.xml datos de un medidor en ESPI/ })).toBeDefined();
  expect(screen.getByRole('heading', { name: 'De quién son estos archivos' })).toBeDefined();
});
