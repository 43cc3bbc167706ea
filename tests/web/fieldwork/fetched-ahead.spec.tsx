import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { fetchAhead } from '../../../apps/web/src/app/pages.js';
import { rememberViewer } from '../../../apps/web/src/session/remembered-viewer.js';
import { viewerOf } from '../support/draw-page.js';
import { freshPhone } from './at-phone.js';

beforeEach(() => {
  freshPhone();
  vi.stubGlobal('navigator', { ...navigator, serviceWorker: { controller: {} } });
  rememberViewer(viewerOf({ role: 'crewLead', permissions: ['read routes', 'record fieldwork'], crewIds: ['crew-1'] }));
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

// Another page of an older version holds the store, and does not let go.
it('does not wait for ever for a store that never answers', async () => {
  vi.spyOn(indexedDB, 'open').mockImplementation(() => new IDBOpenDBRequest());
  vi.useFakeTimers();
  const drawn = vi.fn();
  void fetchAhead('/today/st1').then(drawn);
  await vi.advanceTimersByTimeAsync(2_900);
  expect(drawn).not.toHaveBeenCalled();
  await vi.advanceTimersByTimeAsync(200);
  expect(drawn).toHaveBeenCalledOnce();
});

it('waits for nothing where no page of the field is opened', async () => {
  vi.spyOn(indexedDB, 'open').mockImplementation(() => new IDBOpenDBRequest());
  await fetchAhead('/month');
});
