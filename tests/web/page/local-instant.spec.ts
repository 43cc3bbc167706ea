import { describe, expect, it } from 'vitest';
import { instantOf, localTimeAt } from '../../../apps/web/src/page/values/local-instant.js';
import { newId } from '../../../apps/web/src/page/values/new-id.js';
import { isWholeMonth } from '../../../apps/web/src/page/values/whole-month.js';

const LA = 'America/Los_Angeles';

// Clock changes in the United States: second Sunday of March and first Sunday of November at 2 am (15 U.S.C. 260a).
describe('the instant of a wall time', () => {
  it.each([
    ['2026-01-15T06:50', LA, '2026-01-15T14:50:00.000Z'],
    ['2026-07-15T06:50', LA, '2026-07-15T13:50:00.000Z'],
    ['2026-03-08T01:59', LA, '2026-03-08T09:59:00.000Z'],
    ['2026-03-08T03:00', LA, '2026-03-08T10:00:00.000Z'],
    // Skipped by the clock: as many minutes after the skip.
    ['2026-03-08T02:30', LA, '2026-03-08T10:30:00.000Z'],
    // It comes twice: the first.
    ['2026-11-01T01:30', LA, '2026-11-01T08:30:00.000Z'],
    ['2026-11-01T02:00', LA, '2026-11-01T10:00:00.000Z'],
    ['2026-07-15T06:50', 'America/Phoenix', '2026-07-15T13:50:00.000Z'],
    ['2026-04-05T02:30', 'Australia/Sydney', '2026-04-04T15:30:00.000Z'],
  ])('%s in %s is %s', (local, zone, instant) => {
    expect(instantOf(local, zone)).toBe(instant);
  });

  it('is told again as the same wall time, each hour of a year', () => {
    for (let hour = 0; hour < 365 * 24; hour += 7) {
      const local = localTimeAt(Date.UTC(2026, 0, 1, hour), LA);
      expect(localTimeAt(Date.parse(instantOf(local, LA)), LA)).toBe(local);
    }
  });
});

describe('small things of the pages', () => {
  it('makes ids of version 7 that sort by time', () => {
    const ids = [newId(1_700_000_000_000), newId(1_700_000_000_001), newId(1_800_000_000_000)];
    for (const id of ids) expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    expect([...ids].sort()).toEqual(ids);
  });

  it('knows the last day of a month', () => {
    expect(['2026-02-28', '2028-02-28', '2028-02-29', '2026-12-31', '2026-09-24'].map(isWholeMonth)).toEqual([
      true,
      false,
      true,
      true,
      false,
    ]);
  });
});
