import { expect, it, vi } from 'vitest';
import { listenToDay } from '../../../apps/web/src/features/fieldwork/routes/live/listen-to-day.js';
import { SpokenSource } from './spoken-source.js';

it('lets go where a person has too many pages open, asks now and then, and listens again when it is looked at', () => {
  vi.useFakeTimers();
  vi.stubGlobal('EventSource', SpokenSource);
  vi.spyOn(document, 'visibilityState', 'get').mockReturnValue('visible');
  SpokenSource.all = [];
  const told: (boolean | 'changed')[] = [];
  const end = listenToDay({ onChange: () => told.push('changed'), onLive: (isLive) => told.push(isLive) });
  SpokenSource.all[0]?.onopen();
  SpokenSource.all[0]?.heard.get('enough')?.();
  expect(SpokenSource.all[0]?.readyState).toBe(SpokenSource.CLOSED);
  vi.advanceTimersByTime(30_000);
  expect(told).toEqual(['changed', true, false, 'changed']);
  expect(SpokenSource.all).toHaveLength(1);
  document.dispatchEvent(new Event('visibilitychange'));
  expect(SpokenSource.all).toHaveLength(2);
  end();
  document.dispatchEvent(new Event('visibilitychange'));
  expect(SpokenSource.all).toHaveLength(2);
  SpokenSource.all = [];
  vi.restoreAllMocks();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});
