import { cleanup, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { openFieldPhone } from '../../../apps/web/src/features/fieldwork/device/FieldPhone.js';
import { StopPage } from '../../../apps/web/src/features/fieldwork/stop/StopPage.js';
import { openAhead, openStore } from '../../../apps/web/src/offline/store.js';
import { rememberViewer } from '../../../apps/web/src/session/remembered-viewer.js';
import { viewerOf } from '../support/draw-page.js';
import { drawAtPhone, freshPhone } from './at-phone.js';
import { builtStop } from './built-stop.js';

// A page of the field that is opened cold: what the phone holds is there before anybody is asked.

beforeEach(freshPhone);
afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

const crewLead = viewerOf({ role: 'crewLead', permissions: ['read routes', 'record fieldwork'], crewIds: ['crew-1'] });
const page = (answers: Readonly<Record<string, unknown>>) =>
  drawAtPhone(<StopPage />, { at: '/today/st1', route: '/today/:stopId', viewer: crewLead, answers });

async function packet(): Promise<void> {
  rememberViewer(crewLead);
  const { unmount } = page({ stop: builtStop() });
  await screen.findByRole('heading', { level: 1, name: 'Quail Commons' });
  unmount();
}

it('is drawn whole at once where the phone was opened ahead', async () => {
  await packet();
  vi.spyOn(navigator, 'onLine', 'get').mockReturnValue(false);
  await openFieldPhone();
  const { calls } = page({});
  // Not awaited: the very first drawing has it.
  expect(screen.getByRole('heading', { level: 1, name: 'Quail Commons' })).toBeTruthy();
  const asked = () => calls.map(({ name }) => name);
  expect(asked()).not.toContain('OrganizationClock');
  // After, the server is asked all the same: there may be a line of which the device does not know.
  await waitFor(() => expect(asked()).toEqual(expect.arrayContaining(['OrganizationClock', 'Stop'])));
});

it('goes on with a phone that is still being opened, and opens no second one', async () => {
  await packet();
  const opened = vi.spyOn(indexedDB, 'open');
  const opening = openFieldPhone();
  page({ stop: builtStop() });
  expect(screen.queryByRole('heading', { level: 1 })).toBeNull();
  await screen.findByRole('heading', { level: 1, name: 'Quail Commons' });
  await opening;
  expect(opened).toHaveBeenCalledOnce();
});

it('opens the phone itself where nothing was opened ahead, or the phone of another', async () => {
  await packet();
  rememberViewer({ ...crewLead, memberId: 'another' });
  await openFieldPhone();
  page({ stop: builtStop() });
  expect(screen.queryByRole('heading', { level: 1 })).toBeNull();
  await screen.findByRole('heading', { level: 1, name: 'Quail Commons' });
});

it('gives the store that was opened early to whoever asks for it first, and opens another for the next', async () => {
  openAhead('rillbook.early');
  const newer = vi.fn();
  const first = await openStore('rillbook.early', newer);
  const second = await openStore('rillbook.early', () => undefined);
  expect(second).not.toBe(first);
  await first.put('facts', 1, 'told');
  expect(await second.get('facts', 'told')).toBe(1);
  second.close();
  // A newer page wants it: whoever has the store now is told, and lets go of it.
  const wish = indexedDB.open('rillbook.early', 99);
  await new Promise((resolve) => {
    wish.onsuccess = resolve;
  });
  expect(newer).toHaveBeenCalledOnce();
  wish.result.close();
});

it('says why where the store does not open, however early it was tried', async () => {
  vi.spyOn(indexedDB, 'open').mockImplementation(() => {
    throw new DOMException('No room at all.', 'UnknownError');
  });
  rememberViewer(crewLead);
  await openFieldPhone();
  page({});
  await screen.findByText(/keeps nothing/);
});
