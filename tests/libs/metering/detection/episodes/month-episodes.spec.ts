import type { JudgedMonth } from '@rillbook/metering/detection/episodes/judged-month.js';
import { monthEpisodes } from '@rillbook/metering/detection/episodes/month-episodes.js';
import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { Episode } from '@rillbook/metering/detection/evidence/episode.js';
import type { FindingCandidate } from '@rillbook/metering/detection/finding-candidate.js';
import { describe, expect, it } from 'vitest';
import { anEpisode } from './an-episode.js';

const thresholds = { minConfidence: 0.9, minLitres: 8000, minMoney: 10 };
const over = (litres: number): FindingCandidate => {
  const { openedLocalDay: _, clearedLocalDay: __, ...candidate } = anEpisode({ kind: 'over-programmed', controllerId: 'c', litres });
  return { ...candidate, causeKey: 'over-programmed controller:c' };
};
const aMonth = (month: string, litres: number | null, given: Partial<JudgedMonth> = {}): JudgedMonth => ({
  month,
  throughDate: `${month}-30`,
  daysCovered: 30,
  daysInMonth: 30,
  candidates: litres === null ? [] : [{ ...over(litres), fromDate: `${month}-01`, untilDate: `${month}-30` }],
  allowance: null,
  ...given,
});
const told = (months: readonly JudgedMonth[]) =>
  monthEpisodes(months, [], thresholds).map(({ fromDate, openedLocalDay, clearedLocalDay, litres }) => ({
    fromDate,
    openedLocalDay,
    clearedLocalDay,
    litres,
  }));
const end = (month: string) => dayNumberOfDate(`${month}-30`) + 1;

describe('settings through the months', () => {
  it('are one episode from the first month that is worth a look to the first that is not, with the newest numbers', () => {
    expect(told([aMonth('2025-04', 2000), aMonth('2025-06', 9000), aMonth('2025-09', 12_000), aMonth('2025-11', 1000)])).toEqual([
      { fromDate: '2025-06-01', openedLocalDay: end('2025-06'), clearedLocalDay: end('2025-11'), litres: 12_000 },
    ]);
  });

  it('do not close and open again for a month that is a little less', () => {
    expect(told([aMonth('2025-04', 9000), aMonth('2025-06', 5000), aMonth('2025-09', 9000)])).toMatchObject([{ clearedLocalDay: null }]);
  });

  it('come back as an episode of their own', () => {
    expect(told([aMonth('2025-04', 9000), aMonth('2025-06', null), aMonth('2025-09', 9000)])).toMatchObject([
      { fromDate: '2025-04-01', clearedLocalDay: end('2025-06') },
      { fromDate: '2025-09-01', clearedLocalDay: null },
    ]);
  });

  it('say nothing in the first week of a month, and end within it only when half of it says otherwise', () => {
    const young = { throughDate: '2025-06-05', daysCovered: 5 };
    expect(told([aMonth('2025-06', 90_000, young)])).toEqual([]);
    expect(told([aMonth('2025-04', 9000), aMonth('2025-06', null, { throughDate: '2025-06-12', daysCovered: 12 })])).toMatchObject([
      { clearedLocalDay: null },
    ]);
    expect(told([aMonth('2025-04', 9000), aMonth('2025-06', null, { throughDate: '2025-06-18', daysCovered: 18 })])).toMatchObject([
      { clearedLocalDay: dayNumberOfDate('2025-06-19') },
    ]);
  });
});

describe('over allowance', () => {
  const { causeKey: _, ...excess } = over(30_000);
  const allowance: FindingCandidate = { ...excess, kind: 'over allowance', causeKey: 'over allowance', causeFamily: 'over allowance' };
  const month = aMonth('2025-06', null, { allowance });

  it('opens only where nothing else explains the excess of the month', () => {
    expect(monthEpisodes([month], [], thresholds)).toMatchObject([{ kind: 'over allowance', litres: 30_000 }]);
    const leak = anEpisode({ litres: 20_000, fromDate: '2025-06-10', openedLocalDay: end('2025-06') + 10 });
    expect(monthEpisodes([month], [leak], thresholds)).toEqual([]);
    expect(monthEpisodes([month], [{ ...leak, litres: 10_000 }], thresholds)).toHaveLength(1);
    expect(
      monthEpisodes(
        [month],
        [{ ...leak, fromDate: '2025-04-01', openedLocalDay: end('2025-04'), clearedLocalDay: end('2025-04') + 5 }],
        thresholds,
      ),
    ).toHaveLength(1);
    expect(monthEpisodes([{ ...month, candidates: aMonth('2025-06', 20_000).candidates }], [], thresholds).map(({ kind }) => kind)).toEqual(
      ['over-programmed'],
    );
  });

  it('is explained by what the hours show on the days of the month, and not by a zone that passes less', () => {
    // 30,000 L too much; 40,000 L a month from 11 June on are 26,000 L of June, from 26 June on 6,600 L.
    const seen = { litres: 40_000, fromDate: '2025-06-11', openedLocalDay: dayNumberOfDate('2025-06-13') };
    const more = { code: 'zone flow changed', details: { change: 0.4 } };
    const kindsBeside = (given: Partial<Episode>) =>
      monthEpisodes([month], [anEpisode({ ...seen, ...given })], thresholds).map(({ kind }) => kind);
    expect(kindsBeside({ kind: 'steady flow' })).toEqual([]);
    expect(kindsBeside({ kind: 'off-schedule run' })).toEqual([]);
    expect(kindsBeside({ kind: 'zone flow changed', says: more })).toEqual([]);
    expect(kindsBeside({ kind: 'zone flow changed', says: { ...more, details: { change: -0.4 } } })).toEqual(['over allowance']);
    expect(kindsBeside({ kind: 'steady flow', fromDate: '2025-06-26' })).toEqual(['over allowance']);
    expect(kindsBeside({ kind: 'steady flow', clearedLocalDay: dayNumberOfDate('2025-06-15') })).toEqual(['over allowance']);
  });
});
