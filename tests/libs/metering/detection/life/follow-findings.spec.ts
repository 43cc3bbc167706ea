import { followFindings, type FindingStep } from '@rillbook/metering/detection/life/follow-findings.js';
import type { KeptFinding, TimedEpisode } from '@rillbook/metering/detection/life/kept-finding.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anEpisode, someEpisodes } from '../episodes/an-episode.js';
import { settleEpisodes } from '@rillbook/metering/detection/episodes/settle-episodes.js';

const DAY = 86_400_000;
const SINCE = Date.UTC(2025, 6, 1);

const timed = (given: Partial<TimedEpisode> = {}): TimedEpisode => {
  const { openedLocalDay: _, clearedLocalDay: __, ...candidate } = anEpisode();
  return { ...candidate, untilDate: '2025-07-20', openedAt: SINCE, clearedAt: null, ...given };
};
const kept = (given: Partial<KeptFinding> = {}): KeptFinding => {
  const { kind, causeKey, causeFamily, meterId, controllerId, litres, openedAt } = timed();
  const own = { kind, causeKey, causeFamily, meterId, controllerId, litres, openedAt };
  const state = {
    state: 'open',
    zoneId: null,
    clearedAt: null,
    cameBack: 0,
    decidedAt: null,
    dismissedReason: null,
    isPast: false,
  } as const;
  return { id: 'f', ...own, ...state, ...given };
};
const deeds = (findings: readonly KeptFinding[], episodes: readonly TimedEpisode[]) =>
  followFindings(findings, episodes).map(({ deed }) => deed);

describe('a finding', () => {
  it('is opened once, follows its episode, and is cleared when that ends or is told no more', () => {
    expect(deeds([], [timed()])).toEqual(['open']);
    expect(deeds([kept()], [timed({ litres: 30_000 })])).toEqual(['follow']);
    expect(deeds([kept()], [timed({ clearedAt: SINCE + 9 * DAY })])).toEqual(['clear']);
    expect(deeds([kept({ state: 'in work' })], [])).toEqual(['clear']);
  });

  it('is the same when its cause takes another kind, and when records move its beginning', () => {
    const steady = timed({ kind: 'steady flow', causeKey: 'steady flow meter:m 2025-07-03' });
    expect(followFindings([kept()], [steady])).toMatchObject([{ deed: 'follow', finding: { id: 'f' }, episode: { kind: 'steady flow' } }]);
    const moved = timed({ causeKey: 'unexplained use meter:m 2025-06-20', openedAt: SINCE - 10 * DAY });
    expect(deeds([kept()], [moved])).toEqual(['follow']);
    expect(deeds([kept()], [timed({ meterId: 'n', causeKey: 'unexplained use meter:n 2025-07-01' })])).toEqual(['open', 'clear']);
  });

  it('that was resolved comes back when records well after it still show it, and not before', () => {
    const resolved = kept({ state: 'resolved', decidedAt: SINCE + 5 * DAY });
    expect(deeds([resolved], [timed()])).toEqual([]);
    expect(deeds([resolved], [timed({ untilDate: '2025-08-20' })])).toEqual(['come back']);
    // By the hour three nights are enough.
    const hourly = { kind: 'steady flow', causeKey: 'steady flow meter:m 2025-07-01' } as const;
    expect(deeds([{ ...resolved, ...hourly }], [timed({ ...hourly, untilDate: '2025-07-10' })])).toEqual(['come back']);
  });

  it('that opens anew because it grew has not come back, unless it was taken for done', () => {
    const before = timed({ clearedAt: SINCE + 30 * DAY });
    const says = { code: 'unexplained use', details: { outgrownLitresPerMonth: 9000 } };
    const grown = timed({ causeKey: 'unexplained use meter:m 2025-07-20', openedAt: SINCE + 30 * DAY, says });
    const opened = (state: KeptFinding['state']) => followFindings([kept({ state })], [before, grown]).find(({ deed }) => deed === 'open');
    expect(opened('open')).toMatchObject({ cameBack: 0 });
    expect(opened('in work')).toMatchObject({ cameBack: 0 });
    expect(opened('resolved')).toMatchObject({ cameBack: 1 });
  });

  it('that somebody opened again after it had cleared stays open, until it is seen and clears anew', () => {
    const again = kept({ clearedAt: SINCE + 9 * DAY, decidedAt: SINCE + 12 * DAY });
    expect(deeds([again], [timed({ clearedAt: SINCE + 9 * DAY })])).toEqual(['follow']);
    expect(deeds([again], [])).toEqual([]);
    expect(deeds([again], [timed({ clearedAt: SINCE + 20 * DAY })])).toEqual(['clear']);
    // Nobody opened it again: a decision before its end holds nothing open.
    expect(deeds([kept({ decidedAt: SINCE + 12 * DAY })], [timed({ clearedAt: SINCE + 9 * DAY })])).toEqual(['clear']);
  });

  it('that was dismissed is silent until it has cleared, and says the next time that it came back', () => {
    const dismissed = kept({ state: 'dismissed', decidedAt: SINCE + DAY, dismissedReason: 'looked after' });
    expect(deeds([dismissed], [timed({ untilDate: '2025-12-31' })])).toEqual([]);
    const cleared = { ...dismissed, clearedAt: SINCE + 20 * DAY };
    const again = timed({ causeKey: 'unexplained use meter:m 2025-12-01', openedAt: SINCE + 160 * DAY });
    const past = timed({ clearedAt: SINCE + 20 * DAY });
    expect(followFindings([cleared], [past, again])).toMatchObject([{ deed: 'open', cameBack: 1, silencedBy: null }]);
  });

  it('that was dismissed comes back while it is still told, when it has grown beyond what its reason covers', () => {
    // Half more, as the reason says when it is given; twice as much of what was not useful.
    const grown = (dismissedReason: KeptFinding['dismissedReason'], litres: number, kind: KeptFinding['kind'] = 'unexplained use') =>
      deeds([kept({ kind, state: 'dismissed', decidedAt: SINCE + DAY, dismissedReason })], [timed({ kind, litres })]);
    expect(grown('client wants it', 30_000)).toEqual([]);
    expect(grown('client wants it', 30_001)).toEqual(['come back']);
    expect(grown('not useful', 40_000)).toEqual([]);
    expect(grown('not useful', 40_001)).toEqual(['come back']);
    for (const reason of ['looked after', 'numbers are wrong', 'other'] as const) expect(grown(reason, 900_000)).toEqual([]);
    // Of a month so far the litres grow with the days alone.
    for (const kind of ['over allowance', 'over-programmed'] as const) expect(grown('client wants it', 60_000, kind)).toEqual([]);
  });

  it('that had ended before anybody was told follows the records, and goes with them', () => {
    const past = kept({ state: 'resolved', isPast: true, clearedAt: SINCE + 9 * DAY });
    expect(deeds([past], [timed({ clearedAt: SINCE + 12 * DAY })])).toEqual(['follow']);
    expect(deeds([past], [])).toEqual(['let go']);
    expect(deeds([kept({ state: 'resolved', clearedAt: SINCE + 9 * DAY })], [])).toEqual([]);
  });
});

describe('zones that usage does not tell apart', () => {
  const oneOf = (likeliest: string, other: string) =>
    ({ kind: 'zone flow changed', causeFamily: `zone flow zone:${likeliest}`, zoneIds: [likeliest, other] }) as const;
  const isDismissed = kept({
    ...{ kind: 'zone flow changed', causeFamily: 'zone flow zone:z4', causeKey: 'zone flow changed zone:z4 2025-07-01' },
    ...{ state: 'dismissed', decidedAt: SINCE + DAY, clearedAt: SINCE + 20 * DAY, dismissedReason: 'client wants it' },
  });
  const later = (zones: ReturnType<typeof oneOf>) =>
    timed({ ...zones, causeKey: `${zones.causeFamily} later`, openedAt: SINCE + 90 * DAY, untilDate: '2025-10-20' });

  it('are silenced by a dismissal of the same, and not by that of other zones of their controller', () => {
    const silencer = (zones: ReturnType<typeof oneOf>) => {
      const [step] = followFindings([isDismissed], [later(zones)]);
      return step?.deed === 'open' ? (step.silencedBy?.id ?? null) : step?.deed;
    };
    expect(silencer(oneOf('z4', 'z5'))).toBe('f');
    expect(silencer(oneOf('z7', 'z8'))).toBeNull();
  });
});

describe('what is learnt from a dismissal', () => {
  const silenced = (reason: KeptFinding['dismissedReason'], given: Partial<TimedEpisode> = {}) => {
    const before = kept({ state: 'dismissed', decidedAt: SINCE + DAY, clearedAt: SINCE + 20 * DAY, dismissedReason: reason });
    const again = timed({ causeKey: 'unexplained use meter:m 2025-12-01', openedAt: SINCE + 160 * DAY, ...given });
    const [step] = followFindings([before], [timed({ clearedAt: SINCE + 20 * DAY }), again]) as Extract<FindingStep, { deed: 'open' }>[];
    return step?.silencedBy?.id ?? null;
  };

  it('silences the same of the same place, and no more than that', () => {
    expect(silenced('hand watering known')).toBe('f');
    expect(silenced('meter known to be off', { litres: 25_000 })).toBe('f');
    expect(silenced('hand watering known', { litres: 40_000 })).toBeNull();
    expect(silenced('hand watering known', { openedAt: SINCE + 500 * DAY })).toBeNull();
    expect(silenced('numbers are wrong')).toBeNull();
    expect(silenced('other')).toBeNull();
  });

  it('raises what is worth telling where it was not useful', () => {
    expect(silenced('not useful', { litres: 39_000 })).toBe('f');
    expect(silenced('not useful', { litres: 41_000 })).toBeNull();
  });
});

it('whatever the records tell, no finding and no episode has two steps, and what was done is not to be done again', () => {
  fc.assert(
    fc.property(someEpisodes, (all) => {
      const episodes = settleEpisodes(all).map(({ openedLocalDay, clearedLocalDay, ...candidate }) => ({
        ...candidate,
        openedAt: openedLocalDay * DAY,
        clearedAt: clearedLocalDay === null ? null : clearedLocalDay * DAY,
      }));
      const opened = followFindings([], episodes) as Extract<FindingStep, { deed: 'open' }>[];
      expect(opened).toHaveLength(episodes.length);
      const findings = opened.map(({ episode, cameBack }, at): KeptFinding => {
        const isOver = episode.clearedAt !== null;
        const { kind, causeKey, causeFamily, meterId, controllerId, litres, openedAt, clearedAt } = episode;
        const own = {
          id: `f${at}`,
          kind,
          causeKey,
          causeFamily,
          meterId,
          controllerId,
          zoneId: null,
          litres,
          openedAt,
          clearedAt,
          cameBack,
        };
        return { ...own, state: isOver ? 'resolved' : 'open', isPast: isOver, decidedAt: null, dismissedReason: null };
      });
      const again = followFindings(findings, episodes);
      expect(again.map(({ deed }) => deed)).toEqual(again.map(() => 'follow'));
      const ids = again.map((step) => (step.deed === 'open' ? '' : step.finding.id));
      expect(new Set(ids).size).toBe(findings.length);
    }),
    { numRuns: 300 },
  );
});
