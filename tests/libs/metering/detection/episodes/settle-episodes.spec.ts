import type { Episode } from '@rillbook/metering/detection/evidence/episode.js';
import { settleEpisodes } from '@rillbook/metering/detection/episodes/settle-episodes.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anEpisode, SOME_DAY, someEpisodes } from './an-episode.js';

const told = (episodes: readonly Episode[]) =>
  settleEpisodes(episodes).map(({ kind, openedLocalDay, clearedLocalDay }) => [
    kind,
    openedLocalDay - SOME_DAY,
    clearedLocalDay && clearedLocalDay - SOME_DAY,
  ]);

describe('one cause, one episode', () => {
  it('moves from readings to the hours: the same episode becomes what the hours show, opened when readings told it', () => {
    const monthly = anEpisode({ litres: 20_000, clearedLocalDay: SOME_DAY + 20 });
    const hourly = anEpisode({ kind: 'steady flow', litres: 24_000, openedLocalDay: SOME_DAY + 8, clearedLocalDay: SOME_DAY + 40 });
    const [found, ...others] = settleEpisodes([monthly, hourly]);
    expect(others).toEqual([]);
    expect(found).toMatchObject({
      kind: 'steady flow',
      causeKey: monthly.causeKey,
      fromDate: monthly.fromDate,
      openedLocalDay: SOME_DAY,
      clearedLocalDay: SOME_DAY + 40,
      earlier: [{ kind: 'unexplained use', openedLocalDay: SOME_DAY }],
    });
  });

  it('stays what the hours showed where readings go on after them', () => {
    const hourly = anEpisode({ kind: 'off-schedule run', clearedLocalDay: SOME_DAY + 50 });
    const monthly = anEpisode({ openedLocalDay: SOME_DAY + 60, clearedLocalDay: null });
    expect(told([monthly, hourly])).toEqual([['off-schedule run', 0, null]]);
  });

  it('is two where litres differ too much, the meters differ, or one ended long before', () => {
    const leak = anEpisode({ clearedLocalDay: SOME_DAY + 20 });
    const later = { kind: 'steady flow', openedLocalDay: SOME_DAY + 30 } as const;
    expect(told([leak, anEpisode({ ...later, litres: 90_000 })])).toHaveLength(2);
    expect(told([leak, anEpisode({ ...later, meterId: 'n' })])).toHaveLength(2);
    expect(told([leak, anEpisode({ kind: 'steady flow', openedLocalDay: SOME_DAY + 66 })])).toHaveLength(2);
    expect(told([leak, anEpisode({ ...later })])).toHaveLength(1);
  });

  it('is overwatered until settings are known, then over-programmed', () => {
    const overwatered = anEpisode({ kind: 'overwatered', litres: 80_000, clearedLocalDay: SOME_DAY + 30 });
    const programmed = anEpisode({ kind: 'over-programmed', controllerId: 'c', openedLocalDay: SOME_DAY + 40, litres: 20_000 });
    expect(told([programmed, overwatered])).toEqual([['over-programmed', 0, null]]);
    // While nobody knows the settings they are not the cause.
    expect(told([programmed, { ...overwatered, clearedLocalDay: null }])).toHaveLength(2);
  });

  it('is not unexplained beside the reading that was doubted for it and was right', () => {
    const doubted = anEpisode({
      kind: 'doubtful reading',
      says: { code: 'implausibly high', details: {} },
      clearedLocalDay: SOME_DAY + 30,
    });
    const leak = anEpisode({ openedLocalDay: SOME_DAY + 30, fromDate: doubted.fromDate });
    expect(told([leak, doubted])).toEqual([['unexplained use', 0, null]]);
  });

  it('does not deliver and stands still in one', () => {
    const stuck = anEpisode({ kind: 'doubtful reading', says: { code: 'stuck', details: {} }, clearedLocalDay: SOME_DAY + 30 });
    const lacking = anEpisode({ kind: 'not delivering', clearedLocalDay: SOME_DAY + 60 });
    expect(told([stuck, lacking])).toEqual([['not delivering', 0, 60]]);
  });
});

describe('whatever the episodes', () => {
  const gone = (one: Episode) => one.clearedLocalDay ?? Number.POSITIVE_INFINITY;

  it('come to the same in any order, and settling again changes nothing', () => {
    fc.assert(
      fc.property(
        someEpisodes.chain((all) => fc.tuple(fc.constant(all), fc.shuffledSubarray([...all], { minLength: all.length }))),
        ([all, shuffled]) => {
          const settled = settleEpisodes(all);
          expect(settleEpisodes(shuffled)).toEqual(settled);
          expect(settleEpisodes(settled)).toEqual(settled);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('lose no time that was told, tell none that was not, and have a key each', () => {
    fc.assert(
      fc.property(someEpisodes, (all) => {
        const settled = settleEpisodes(all);
        expect(new Set(settled.map(({ causeKey }) => causeKey)).size).toBe(settled.length);
        for (const one of all) {
          const covering = settled.filter(
            (other) => other.meterId === one.meterId && other.openedLocalDay <= one.openedLocalDay && gone(other) > one.openedLocalDay,
          );
          expect(covering.length).toBeGreaterThan(0);
        }
        for (const one of settled) {
          expect(all.some((other) => other.meterId === one.meterId && other.openedLocalDay === one.openedLocalDay)).toBe(true);
          expect(all.some((other) => other.meterId === one.meterId && other.kind === one.kind)).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });
});
