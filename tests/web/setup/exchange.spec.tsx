import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { SetupPage } from '../../../apps/web/src/features/setup/frame/SetupPage.js';
import { builtProperty } from '../support/built.js';
import { drawPage } from '../support/draw-page.js';
import { ownerOf } from './owner.js';

const file = (name: string, given: object = {}) => ({
  name: `${name}.csv`,
  file: name,
  recognized: null,
  rejectedAs: name,
  status: 'read',
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

const cubits = {
  file: 'meters.csv',
  line: 7,
  column: 'unit',
  code: 'NOT_A_WORD',
  found: 'cubits',
  expected: 'CCF, gal',
  says: '"cubits" is not one of the words of this column. Expected one of: CCF, gal.',
};
const checked = {
  id: 'up-1',
  files: [file('properties', { new: 3, same: 1 }), file('meters', { new: 2, changed: 1, wrong: 1, problems: [cubits], problemsTotal: 1 })],
  ignored: [{ name: 'notes.txt', says: 'This file is not one of the import files and was left aside.' }],
  problemsTotal: 1,
  rows: 8,
};

/** What the page sent, and what it is answered. */
const http = {
  sent: [] as { method: string; address: string; headers: Record<string, string>; body: unknown }[],
  upload: { status: 201, body: checked as object },
};

class BuiltRequest {
  status = 0;
  responseText = '';
  upload: { onprogress?: (progress: { loaded: number; total: number }) => void } = {};
  onload?: () => void;
  onerror?: () => void;
  private readonly headers: Record<string, string> = {};
  private address = '';
  open(_: string, address: string): void {
    this.address = address;
  }
  setRequestHeader(name: string, value: string): void {
    this.headers[name] = value;
  }
  send(body: FormData): void {
    http.sent.push({
      method: 'POST',
      address: this.address,
      headers: this.headers,
      body: body.getAll('files').map((one) => (one as File).name),
    });
    this.upload.onprogress?.({ loaded: 10, total: 10 });
    this.status = http.upload.status;
    this.responseText = JSON.stringify(http.upload.body);
    setTimeout(() => this.onload?.());
  }
}

beforeEach(() => {
  http.sent = [];
  http.upload = { status: 201, body: checked };
  vi.stubGlobal('XMLHttpRequest', BuiltRequest);
  vi.stubGlobal(
    'fetch',
    async (
      address: string,
      { method = 'GET', headers = {}, body }: { method?: string; headers?: Record<string, string>; body?: string } = {},
    ) => {
      http.sent.push({ method, address, headers, body: body === undefined ? null : JSON.parse(body) });
      if (method === 'DELETE') return new Response(null, { status: 204 });
      return Response.json(method === 'POST' ? { jobId: 'job-1' } : checked, { status: method === 'POST' ? 202 : 200 });
    },
  );
});
afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

const draw = (given: { properties?: object[]; job?: object | null; at?: string; language?: 'en' | 'es' } = {}) =>
  drawPage(<SetupPage />, {
    route: '/setup/*',
    at: given.at ?? '/setup',
    viewer: ownerOf(),
    ...(given.language ? { language: given.language } : {}),
    answers: {
      properties: given.properties ?? [builtProperty('p1', 'Quail Commons')],
      signInPage: { empty: false, demo: [] },
      job: given.job ?? null,
      recomputeAccounts: { id: 'job-2', kind: 'accounts', state: 'queued', done: 0, total: 0, createdAt: '2026-09-24T15:00:00Z' },
    },
  });

const drop = async (user: ReturnType<typeof draw>['user'], name = 'meters.csv') =>
  user.upload(screen.getByLabelText('Choose files'), new File(['meter,property'], name, { type: 'text/csv' }));

describe('bringing files in', () => {
  it('on an empty organization, says which list gives which of the four volumes', async () => {
    draw({ properties: [] });
    expect(await screen.findByRole('heading', { level: 1, name: /gauge fills mark by mark/ })).toBeDefined();
    for (const [list, volume] of [
      ['Clients and properties', 'allowed'],
      ['Zones and plants', 'needed'],
      ['Controllers and settings', 'programmed'],
      ['Meters and readings', 'metered'],
    ] as const) {
      const row = screen.getByRole('heading', { level: 3, name: list }).closest('tr')!;
      expect(within(row).getByText(volume)).toBeDefined();
      expect(within(row).getByRole('button', { name: `Choose files: ${list}` })).toBeDefined();
    }
    expect(screen.getByRole('link', { name: 'Type the first property' }).getAttribute('href')).toBe('/setup/properties?thing=new');
  });

  it('shows what the files would change, and each problem by its place', async () => {
    const { user, address } = draw();
    await screen.findByRole('heading', { level: 1 });
    await drop(user);
    expect(await screen.findByRole('heading', { level: 1, name: '5 new rows, 1 changed, 1 that cannot be read' })).toBeDefined();
    expect(address()).toBe('/setup?import=up-1');
    expect(http.sent[0]).toMatchObject({ address: '/api/imports', headers: { 'x-rillbook-request': '1' }, body: ['meters.csv'] });
    expect(
      screen
        .getAllByRole('columnheader')
        .slice(0, 5)
        .map(({ textContent }) => textContent),
    ).toEqual(['File', 'New', 'Changed', 'Same', 'Wrong']);
    const meters = within(screen.getByRole('table', { name: 'What each file would change' })).getByRole('row', { name: /^Meters/ });
    expect(
      within(meters)
        .getAllByRole('cell')
        .slice(1)
        .map(({ textContent }) => textContent),
    ).toEqual(['2', '1', '0', '1']);
    expect(within(meters).getByRole('link', { name: 'Download 1 row to mend' }).getAttribute('href')).toBe(
      '/api/imports/up-1/rejected/meters',
    );
    const problem = within(screen.getByRole('table', { name: 'What is wrong, by file and line' })).getByRole('row', { name: /cubits/ });
    expect(
      within(problem)
        .getAllByRole('cell')
        .map(({ textContent }) => textContent),
    ).toEqual(['meters.csv', '7', 'unit', 'cubits', cubits.says]);
    expect(screen.getByText('One file was left aside')).toBeDefined();
  });

  it('imports the good rows in the background, and says when it is done and where to look', async () => {
    const { user } = draw({
      job: {
        id: 'job-1',
        kind: 'import',
        state: 'done',
        done: 6,
        total: 6,
        says: '5 rows new, 1 changed',
        createdAt: '2026-09-24T15:00:00Z',
      },
    });
    await screen.findByRole('heading', { level: 1 });
    await drop(user);
    await user.click(await screen.findByRole('button', { name: 'Import the good rows' }));
    expect(await screen.findByRole('heading', { level: 1, name: 'The import is done' })).toBeDefined();
    expect(http.sent.find(({ address }) => address.endsWith('/accept'))).toMatchObject({
      method: 'POST',
      headers: { 'x-rillbook-request': '1' },
      body: { rows: 'good' },
    });
    expect(screen.getByText(/5 rows new, 1 changed/)).toBeDefined();
    expect(screen.getByRole('link', { name: 'See the portfolio' }).getAttribute('href')).toBe('/');
    expect(screen.getByRole('link', { name: 'Download 1 row to mend' })).toBeDefined();
  });

  it('shows how far the import is', async () => {
    draw({
      at: '/setup?import=up-1&job=job-1',
      job: { id: 'job-1', kind: 'import', state: 'running', done: 2, total: 6, says: null, createdAt: '2026-09-24T15:00:00Z' },
    });
    expect((await screen.findByRole('progressbar', { name: 'Rows' })).getAttribute('value')).toBe('2');
    expect(screen.getByText('2 of 6')).toBeDefined();
  });

  it('imports nothing when asked to, and forgets the files', async () => {
    const { user, address } = draw({ at: '/setup?import=up-1' });
    await user.click(await screen.findByRole('button', { name: 'Import nothing' }));
    await waitFor(() => expect(address()).toBe('/setup'));
    expect(http.sent.at(-1)).toMatchObject({ method: 'DELETE', address: '/api/imports/up-1', headers: { 'x-rillbook-request': '1' } });
  });

  it('offers no import where no row can be read', async () => {
    http.upload.body = { ...checked, files: [file('meters', { wrong: 1, problems: [cubits], problemsTotal: 1 })] };
    vi.stubGlobal('fetch', async () => Response.json(http.upload.body));
    draw({ at: '/setup?import=up-1' });
    expect(await screen.findByRole('heading', { level: 1, name: 'None of these rows can be imported as it is' })).toBeDefined();
    expect(screen.queryByRole('button', { name: /^Import the good|^Import all/ })).toBeNull();
  });

  it('tells in the server’s words why files were not taken', async () => {
    http.upload = { status: 413, body: { code: 'UPLOAD_TOO_LARGE', message: 'The files are larger than 200 MB together.' } };
    const { user, address } = draw();
    await screen.findByRole('heading', { level: 1 });
    await drop(user);
    expect((await screen.findByRole('alert')).textContent).toContain('The files are larger than 200 MB together.');
    expect(address()).toBe('/setup');
  });

  it('speaks Spanish', async () => {
    draw({ at: '/setup?import=up-1', language: 'es' });
    expect(await screen.findByRole('heading', { level: 1, name: '5 filas nuevas, 1 cambiada, 1 que no se puede leer' })).toBeDefined();
    expect(screen.getByRole('button', { name: 'Importar las filas buenas' })).toBeDefined();
  });
});

describe('taking everything out, and computing it anew', () => {
  it('links to the export, and says how far the computing is', async () => {
    const { user, calls } = draw({
      job: { id: 'job-2', kind: 'accounts', state: 'done', done: 4, total: 4, says: null, createdAt: '2026-09-24T15:00:00Z' },
    });
    expect((await screen.findByRole('link', { name: 'Download everything' })).getAttribute('href')).toBe('/api/export');
    await user.click(screen.getByRole('button', { name: 'Compute all accounts' }));
    expect(await screen.findByText(/All accounts are computed/)).toBeDefined();
    expect(calls.map(({ name }) => name)).toContain('RecomputeAccounts');
  });
});
