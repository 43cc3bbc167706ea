import { handedOver } from '@rillbook/metering/detection/episodes/hand-over.js';
import { judgeMeter } from '@rillbook/metering/detection/episodes/judge-meter.js';
import { settleEpisodes } from '@rillbook/metering/detection/episodes/settle-episodes.js';
import { spellsTogether } from '@rillbook/metering/detection/episodes/spells-together.js';
import { describe, expect, it } from 'vitest';
import { monthlyMeter } from '../../../../support/worlds/monthly-meter.mjs';
import { anEpisode, SOME_DAY } from './an-episode.js';

const thresholds = { minConfidence: 0.9, minLitres: 1000, minMoney: 0 };
const quiet = { noise: 0.005, ratio: 1.02 } as const;

describe('a meter that is read', () => {
  it('tells a leak once, from readings alone, with its end', () => {
    const evidence = monthlyMeter(3, { ...quiet, trouble: { fromReading: 14, untilReading: 17, share: 0.4 } });
    const found = settleEpisodes(judgeMeter(evidence, thresholds));
    expect(found.map(({ kind }) => kind)).toEqual(['unexplained use']);
    expect(found[0]?.openedLocalDay).toBe(evidence.intervals[14]?.toLocalDay);
    expect(found[0]?.clearedLocalDay).toBe(evidence.intervals[17]?.toLocalDay);
  });

  // It rains on day 150; the interval with it passes what its programs put out, or less by two of its runs.
  const rained = (litres: number) => {
    const evidence = monthlyMeter(3, quiet);
    const rainy = evidence.firstDay + 150;
    const intervals = evidence.intervals.map((interval) =>
      interval.fromLocalDay < rainy && interval.toLocalDay > rainy ? { ...interval, litres: interval.litres - litres } : interval,
    );
    return { ...evidence, intervals, rainMm: evidence.rainMm.map((_, day) => (day === 150 ? 60 : 0)) };
  };
  const RUN = 2 * 9000 * 1.02;

  it('tells of programs that ran through rain at once who asks for no more than the records can be sure of', () => {
    const [wet] = judgeMeter(rained(0), { ...thresholds, minConfidence: 0.8 });
    expect(wet).toMatchObject({ kind: 'watered in rain', says: { details: { spells: 1 } }, openedLocalDay: 19_723 + 153 });
  });

  it('tells who asks for more with the reading that shows that they ran, and not where it shows that they did not', () => {
    const evidence = rained(0);
    const shown = evidence.intervals.find(({ toLocalDay }) => toLocalDay > evidence.firstDay + 151)?.toLocalDay;
    const [wet, ...others] = judgeMeter(evidence, thresholds);
    expect(others).toEqual([]);
    expect(wet).toMatchObject({ kind: 'watered in rain', openedLocalDay: shown, evidence: { seenByMeter: true } });
    expect(wet?.confidence).toBeGreaterThan(0.9);
    expect(judgeMeter(rained(2 * RUN), thresholds).filter(({ kind }) => kind === 'watered in rain')).toEqual([]);
  });
});

describe('evidence that changes hands', () => {
  const evidence = monthlyMeter(3, quiet);
  const day = evidence.firstDay + 200;
  const withHours = (days: number) => ({
    ...evidence,
    usage: { firstMinute: evidence.midnights[200]!, stepMinutes: 60, litres: new Float64Array(24 * days).fill(1), resolutionLitres: 1 },
    intervals: evidence.intervals.filter(({ toLocalDay }) => toLocalDay < day),
  });

  it('ends what readings left open when two weeks of hours have not shown it', () => {
    const open = anEpisode({ openedLocalDay: day - 10 });
    expect(handedOver(withHours(60), { monthly: [open], hourly: [] }).monthly).toMatchObject([{ clearedLocalDay: day + 14 }]);
    expect(handedOver(withHours(7), { monthly: [open], hourly: [] }).monthly).toMatchObject([{ clearedLocalDay: null }]);
    expect(handedOver(evidence, { monthly: [open], hourly: [] }).monthly).toEqual([open]);
  });

  it('ends what the hours left open when the second reading after them has not shown it', () => {
    const open = anEpisode({ kind: 'steady flow', openedLocalDay: day + 3 });
    const readAfter = { ...withHours(20), intervals: evidence.intervals.filter(({ fromLocalDay }) => fromLocalDay > day + 20) };
    expect(handedOver(readAfter, { monthly: [], hourly: [open] }).hourly).toMatchObject([
      { clearedLocalDay: readAfter.intervals[1]!.toLocalDay },
    ]);
    expect(handedOver(withHours(20), { monthly: [], hourly: [open] }).hourly).toMatchObject([{ clearedLocalDay: null }]);
  });
});

it('rain that comes again within a month is one habit, and after it another', () => {
  const spell = (after: number, litres: number) =>
    anEpisode({ kind: 'watered in rain', openedLocalDay: SOME_DAY + after, clearedLocalDay: SOME_DAY + after + 3, litres });
  expect(spellsTogether([spell(0, 5000), spell(20, 9000), spell(80, 4000)])).toMatchObject([
    { openedLocalDay: SOME_DAY, clearedLocalDay: SOME_DAY + 23, litres: 9000, says: { details: { spells: 2 } } },
    { openedLocalDay: SOME_DAY + 80, litres: 4000, says: { details: { spells: 1 } } },
  ]);
});
