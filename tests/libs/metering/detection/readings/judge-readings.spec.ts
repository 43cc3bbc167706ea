import { judgeReadings } from '@rillbook/metering/detection/readings/judge-readings.js';
import { readingEpisodes } from '@rillbook/metering/detection/readings/reading-episodes.js';
import type { ReadingSeries } from '@rillbook/metering/detection/readings/reading-series.js';
import { describe, expect, it } from 'vitest';
import { drawsOf } from '../../../../support/worlds/monthly-meter.mjs';
import { misread, type Mistake, mistakes, readMeter } from '../../../../support/worlds/read-meter.mjs';

const RIGHT = new Set<string>(['first', 'ok', 'rollover']);
const seeds = Array.from({ length: 60 }, (_, at) => at + 1);
/** What may be known besides the registers. */
const knowledge: Readonly<Record<string, (series: ReadingSeries) => ReadingSeries>> = {
  'demand and digits': (series) => series,
  'digits alone': (series) => ({ ...series, demandLitres: null }),
  'demand alone': (series) => ({ ...series, digits: null }),
  neither: (series) => ({ ...series, demandLitres: null, digits: null }),
};

// Every thirty days, 300 units each, in a year without seasons.
const even = (registers: readonly number[], changes: Partial<ReadingSeries> = {}): ReadingSeries => ({
  meterId: 'm1',
  digits: 5,
  litresPerRegisterUnit: 1000,
  readings: registers.map((register, at) => ({ localDay: 20_000 + 30 * at, register })),
  others: [],
  demandLitres: (from, until) => (until - from) * 10_000,
  ...changes,
});
const steady = (count: number, start = 45_000) => Array.from({ length: count }, (_, at) => start + 300 * at);
const judgements = (series: ReadingSeries) => judgeReadings(series).map(({ judgement }) => judgement);

describe.each(Object.entries(knowledge))('with %s known', (_, known) => {
  it('doubts no reading of 180 years of meters with seasons and rollovers, and tells every rollover', () => {
    const judged = seeds.flatMap((seed) => {
      const series = known(readMeter(seed, { start: seed % 3 === 0 ? 98_500 : null }));
      const rolled = series.readings.filter(({ register }, at) => register < (series.readings[at - 1]?.register ?? 0));
      const told = judgeReadings(series);
      expect(told.filter(({ judgement }) => judgement === 'rollover').map(({ register }) => register)).toEqual(
        rolled.map(({ register }) => register),
      );
      return told;
    });
    expect(judged.filter(({ judgement }) => !RIGHT.has(judgement))).toEqual([]);
    expect(judged.filter(({ judgement }) => judgement === 'rollover').length).toBeGreaterThan(15);
  });

  it.each(Object.keys(mistakes) as Mistake[])('finds a register that is %s, where it makes an implausible volume', (mistake) => {
    let [found, made] = [0, 0];
    for (const seed of seeds) {
      const draw = drawsOf(7 * seed + 1);
      const base = readMeter(seed);
      const at = 14 + Math.floor(draw() * 18);
      const series = misread(base, at, mistake, draw);
      const [before, wrong] = [series.readings[at - 1], series.readings[at]];
      if (!before || !wrong || wrong.register >= 10 ** base.digits) continue;
      // Backwards, or more than twice the most that any of these meters passes on a summer's day.
      const moved = wrong.register - before.register;
      if (moved >= 0 && moved <= 80 * (wrong.localDay - before.localDay)) continue;
      made += 1;
      found += Number(!RIGHT.has(judgeReadings(known(series))[at]?.judgement ?? 'ok'));
    }
    // Nineteen of twenty, or all but one where few were drawn.
    expect(made).toBeGreaterThan(3);
    expect(found).toBeGreaterThanOrEqual(Math.min(made - 1, Math.floor(0.95 * made)));
  });
});

describe('the next reading', () => {
  it('confirms a misread, and mends it from both sides', () => {
    const registers = steady(16).map((register, at) => (at === 14 ? 94_200 : register));
    const judged = judgeReadings(even(registers, { demandLitres: null }));
    expect(judged[14]).toMatchObject({
      judgement: 'digits swapped',
      likelyRegister: 49_200,
      seenLocalDay: 20_420,
      settledLocalDay: 20_450,
      isRight: false,
    });
    expect(judged[15]).toMatchObject({ judgement: 'ok', litres: 600_000 });
  });

  it('clears a reading that was right: a swap that nobody wrote down', () => {
    const registers = steady(20).map((register, at) => (at < 14 ? register : 120 + 300 * (at - 14)));
    const series = even(registers);
    const judged = judgeReadings(series);
    expect(judged[14]).toMatchObject({ settledLocalDay: 20_450, isRight: true, seenLocalDay: 20_420 });
    expect(judged.slice(15).every(({ judgement }) => judgement === 'ok')).toBe(true);
    expect(readingEpisodes(series, judged)).toMatchObject([{ kind: 'doubtful reading', openedLocalDay: 20_420, clearedLocalDay: 20_450 }]);
  });

  it('shows that the last was too low: it opens no earlier', () => {
    const registers = steady(18).map((register, at) => (at === 14 ? 48_910 : register));
    const series = even(registers, { demandLitres: (from, until) => (until - from) * 1500 });
    const slow = {
      ...series,
      readings: series.readings.map((reading) => (reading.localDay === 20_420 ? { ...reading, localDay: 20_449 } : reading)),
    };
    const judged = judgeReadings(slow);
    expect(judged[14]).toMatchObject({ judgement: 'digit mistyped', seenLocalDay: 20_450, isRight: false });
    expect(judged[15]).toMatchObject({ judgement: 'ok' });
  });

  it('shows that the last was too high', () => {
    const registers = steady(8).map((register, at) => (at === 5 ? 96_500 : register));
    expect(judgeReadings(even(registers, { demandLitres: null })).slice(4, 7)).toMatchObject([
      { judgement: 'ok' },
      { judgement: 'digit mistyped', likelyRegister: 46_500, seenLocalDay: 20_180, isRight: false },
      { judgement: 'ok' },
    ]);
  });

  it('knows nothing of what comes later', () => {
    for (const seed of seeds.slice(0, 10)) {
      const draw = drawsOf(seed);
      const whole = misread(readMeter(seed), 20, 'mistyped', draw);
      for (let count = 2; count <= whole.readings.length; count += 1) {
        const readings = whole.readings.slice(0, count);
        const now = readings.at(-1)?.localDay ?? 0;
        const wrong = (series: ReadingSeries) =>
          judgeReadings(series)
            .filter(({ judgement, seenLocalDay }) => !RIGHT.has(judgement) && seenLocalDay <= now)
            .map(({ localDay, seenLocalDay }) => [localDay, seenLocalDay]);
        expect(wrong({ ...whole, readings })).toEqual(wrong(whole));
      }
    }
  });
});

describe('a register below the last', () => {
  it('is the last one misread where that stood far above the usual and this one goes on from the one before', () => {
    // 900 of 300 usual units, then the register where two intervals of the usual lead.
    const series = even([...steady(14), 49_800 - 300, 49_500 - 300]);
    expect(judgements(series).slice(13)).toEqual(['ok', expect.not.stringMatching(/^(ok|rollover)$/), 'ok']);
  });

  it('is no rollover where that would be far beyond the usual and a digit left out explains it', () => {
    // 4,920 for 49,200: as a rollover 56,020 units, 187 times the usual; demand alone, in a first year, would let ten times pass.
    const lax = { demandLitres: (from: number, until: number) => (until - from) * 400_000 };
    const judged = judgeReadings(even([...steady(8, 46_800), 4920, 49_500], { ...lax }));
    expect(judged[8]).toMatchObject({ judgement: 'unit mixed up', likelyRegister: 49_200 });
  });

  it('is a rollover still where the register stood near its end', () => {
    expect(judgements(even([...steady(8, 97_800), 200])).at(-1)).toBe('rollover');
  });
});

describe('a timer of which nobody knows the settings', () => {
  it('may go on in winter as it did before', () => {
    const demandLitres = (from: number, until: number) => (until - from) * (from >= 20_150 ? 500 : 10_000);
    const registers = steady(9);
    expect(judgements(even(registers, { demandLitres, programmedLitres: () => null })).slice(1)).toEqual(Array(8).fill('ok'));
    expect(judgements(even(registers, { demandLitres })).slice(1)).not.toEqual(Array(8).fill('ok'));
  });
});

describe('a meter that stands still', () => {
  it('is stuck where water is in demand, until it moves', () => {
    const registers = [...steady(14), 48_900, 48_900, 49_200];
    const series = even(registers);
    expect(judgements(series).slice(13)).toEqual(['ok', 'stuck', 'stuck', 'ok']);
    expect(readingEpisodes(series, judgeReadings(series)).map(({ clearedLocalDay }) => clearedLocalDay)).toEqual([20_480, 20_480]);
  });

  it('is not stuck in winter, or where demand is not known', () => {
    const registers = [...steady(14), 48_900, 48_900];
    expect(judgements(even(registers, { demandLitres: null })).slice(14)).toEqual(['ok', 'ok']);
    const winter = even(registers, { demandLitres: (from, until) => (from >= 20_390 ? 0 : (until - from) * 10_000) });
    expect(judgements(winter).slice(14)).toEqual(['ok', 'ok']);
  });
});

describe("another meter's register", () => {
  const others = [
    { meterId: 'm2', readings: even(Array.from({ length: 16 }, (_, at) => 12_000 + 150 * at)).readings },
    { meterId: 'm3', readings: even(Array.from({ length: 16 }, (_, at) => 71_000 + 90 * at)).readings },
  ];

  it('is told with its meter', () => {
    const registers = steady(15).map((register, at) => (at === 14 ? 72_260 : register));
    const series = even(registers, { others });
    const judged = judgeReadings(series);
    expect(judged[14]).toMatchObject({ judgement: 'another meter', otherMeterId: 'm3', likelyRegister: null });
    expect(readingEpisodes(series, judged)).toMatchObject([{ says: { code: 'implausibly high', details: { otherMeterId: 'm3' } } }]);
  });

  it('is not seen in a reading that fits its own', () => {
    const close = [{ meterId: 'm2', readings: even(steady(16, 45_010)).readings }];
    expect(
      judgements(even(steady(16), { others: close }))
        .slice(1)
        .every((judgement) => judgement === 'ok'),
    ).toBe(true);
  });
});

it('refuses readings out of order', () => {
  const { readings, ...series } = even(steady(3));
  expect(() => judgeReadings({ ...series, readings: readings.toReversed() })).toThrow(
    expect.objectContaining({ code: 'READING_OUT_OF_DOMAIN' }),
  );
});

it('believes a meter that goes on as fast as it was doubted for: a misread register goes back', () => {
  // A leak of fourteen times what ever passed; a register read as much too high, and read rightly the month after.
  const leak = [...steady(14), ...[1, 2, 3, 4].map((month) => 45_000 + 13 * 300 + month * 4400)];
  const judged = judgeReadings(even(leak));
  expect(judged.map(({ judgement }) => judgement).slice(13)).toEqual(['ok', 'implausibly high', 'ok', 'ok', 'ok']);
  expect(judged[14]).toMatchObject({ isRight: true, settledLocalDay: judged[15]?.localDay });
  const wrong = judgeReadings(even(steady(17).map((register, at) => (at === 14 ? register + 4400 : register))));
  expect(wrong[14]).toMatchObject({ isRight: false });
  expect(wrong[15]?.judgement).toBe('ok');
});
