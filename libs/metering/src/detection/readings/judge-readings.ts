import { type JudgedReading, judgeReading, type ReadingPair } from '../../intervals/judge-reading.js';
import { otherMeterOf } from './other-meter.js';
import type { JudgedInSeries, ReadingSeries, SeriesReading } from './reading-series.js';
import { type PassedVolume, type UseSoFar, useSoFar } from './use-so-far.js';

/** A register that stands still is suspect after a week: common practice. [d] */
const STUCK_AFTER_DAYS = 7;
const STUCK_SDS = 2;

/** Settings that put out less than this many units of the register say nothing of one that stands still: common practice. */
const STUCK_STEPS = 2;

/** A last volume below this share of what is usual, and a next one that is too high, say that the last reading was too low. An assumption. */
const TOO_LOW = 0.25;

/**
 * A last volume above this many times the usual, beyond two of its standard deviations, and a next register below it that goes on from the one before, say that
 * the last reading was too high. An assumption.
 */
const TOO_HIGH = 1.7;

/** Between two good readings water passed as it usually does, to this share: by it a misread is mended once the next is known. */
const BETWEEN_RELATIVE_SD = 0.35;

/** Two volumes one after the other are alike when the lesser a day is at least this share of the other. An assumption. */
const ALIKE = 0.5;

const RIGHT = new Set<string>(['ok', 'rollover', 'stuck']);

/**
 * Judges all readings of a meter, each when it came in and again when the next one tells more.
 *
 * A reading that cannot be right is doubted at its own time. The next reading shows that it was wrong, when it goes on from the last good one;
 * or right, when it goes on from the doubted one, be it as fast as the one that was doubted: a register that is misread goes back. A next reading may also show that the last, which was believed, was the misread.
 *
 * @param series - The meter's readings, and what is known about it. [any]
 * @returns One judgement for each reading, in their order. [code]
 * @throws {DomainError} `READING_OUT_OF_DOMAIN` when a register is below zero or has too many digits, or readings are not in order of time.
 */
export function judgeReadings(series: ReadingSeries): readonly JudgedInSeries[] {
  const walk: Walk = { series, good: [], passed: [], doubted: null, judged: new Map() };
  for (const reading of series.readings) follow(walk, reading);
  return series.readings.map((reading) => walk.judged.get(reading) ?? asFirst(reading));
}

interface Walk {
  readonly series: ReadingSeries;
  readonly good: SeriesReading[];
  readonly passed: PassedVolume[];
  doubted: SeriesReading | null;
  readonly judged: Map<SeriesReading, JudgedInSeries>;
}

function follow(walk: Walk, reading: SeriesReading): void {
  const last = walk.good.at(-1);
  if (!last) {
    walk.good.push(reading);
    return;
  }
  const judged = beside(walk, last, reading);
  if (RIGHT.has(judged.judgement)) {
    accept(walk, last, reading, judged);
    return;
  }
  if (walk.doubted && goesOn(walk, walk.doubted, reading)) {
    believe(walk, walk.doubted, reading);
    return;
  }
  if (!walk.doubted && blameLast(walk, last, reading)) return;
  doubt(walk, last, reading, judged);
}

function beside(walk: Walk, last: SeriesReading, next: SeriesReading): JudgedReading {
  const use = useSoFar(walk.series, walk.passed, [last.localDay, next.localDay]);
  const pair = pairOf(walk.series, last, next, use);
  const judged = judgeReading(pair);
  const stands = judged.judgement === 'ok' && judged.litres === 0 && isStuck(pair, use) && wasToMove(walk.series, last, next);
  return stands ? { ...judged, judgement: 'stuck' } : judged;
}

// Settings say whether water was to pass at all: less the days of the readings, whose runs may be on either side. Where they are not known, a timer
// may have been shut off by hand, however dry it was; only where nobody was asked for settings does demand alone say it.
function wasToMove(series: ReadingSeries, last: SeriesReading, next: SeriesReading): boolean {
  if (!series.programmedLitres) return true;
  return (series.programmedLitres(last.localDay + 1, next.localDay - 1) ?? 0) > STUCK_STEPS * series.litresPerRegisterUnit;
}

function pairOf({ digits, litresPerRegisterUnit }: ReadingSeries, last: SeriesReading, next: SeriesReading, use: UseSoFar): ReadingPair {
  return {
    previousRegister: last.register,
    nextRegister: next.register,
    elapsedDays: next.localDay - last.localDay,
    digits,
    litresPerRegisterUnit,
    // Low volumes are seasons and repairs, not misreads: what is expected has no lower limit here.
    expectation: use.expectation,
    usual: use.usual,
  };
}

function isStuck({ elapsedDays, litresPerRegisterUnit }: ReadingPair, { usual, followsDemand }: UseSoFar): boolean {
  if (!usual || !followsDemand || elapsedDays < STUCK_AFTER_DAYS) return false;
  return (usual.litresPerDay - STUCK_SDS * usual.sdLitresPerDay) * elapsedDays > litresPerRegisterUnit;
}

// The doubted one between them was wrong: from both sides it can be mended better.
function accept(walk: Walk, last: SeriesReading, reading: SeriesReading, judged: JudgedReading): void {
  const { doubted } = walk;
  const before = doubted && walk.judged.get(doubted);
  if (doubted && before) {
    const mended = between(walk, last, doubted, (judged.litres ?? 0) / (reading.localDay - last.localDay));
    walk.judged.set(doubted, { ...before, ...mended, settledLocalDay: reading.localDay, isRight: false });
    walk.doubted = null;
  }
  walk.judged.set(reading, told(reading, last, judged));
  walk.good.push(reading);
  walk.passed.push({ fromLocalDay: last.localDay, toLocalDay: reading.localDay, litres: judged.litres ?? 0 });
}

function between(walk: Walk, last: SeriesReading, doubted: SeriesReading, litresPerDay: number): Partial<JudgedInSeries> {
  const usual = { litresPerDay, sdLitresPerDay: BETWEEN_RELATIVE_SD * litresPerDay };
  const pair = pairOf(walk.series, last, doubted, { expectation: usual, usual, followsDemand: false });
  const { judgement, likelyRegister, factor } = judgeReading(pair);
  const before = walk.judged.get(doubted);
  return likelyRegister === null || before?.judgement === 'another meter' ? {} : { judgement, likelyRegister, factor };
}

function goesOn(walk: Walk, doubted: SeriesReading, reading: SeriesReading): boolean {
  const { judgement, litres } = beside(walk, doubted, reading);
  return judgement === 'ok' || judgement === 'rollover' || isAsFast(walk, doubted, (litres ?? 0) / (reading.localDay - doubted.localDay));
}

function isAsFast(walk: Walk, doubted: SeriesReading, litresPerDay: number): boolean {
  const before = walk.judged.get(doubted);
  if (!before?.previous) return false;
  const ownPerDay = (before.litres ?? 0) / (doubted.localDay - before.previous.localDay);
  return Math.min(ownPerDay, litresPerDay) >= ALIKE * Math.max(ownPerDay, litresPerDay) && litresPerDay > 0;
}

// Its own volume is no habit: a swap that nobody wrote down, or water that ran once.
function believe(walk: Walk, doubted: SeriesReading, reading: SeriesReading): void {
  const before = walk.judged.get(doubted);
  if (before) walk.judged.set(doubted, { ...before, settledLocalDay: reading.localDay, isRight: true });
  walk.doubted = null;
  walk.good.push(doubted);
  const judged = beside(walk, doubted, reading);
  accept(walk, doubted, reading, RIGHT.has(judged.judgement) ? judged : { ...judged, judgement: 'ok', likelyRegister: null, factor: null });
}

function blameLast(walk: Walk, last: SeriesReading, reading: SeriesReading): boolean {
  const [before, own] = [walk.good.at(-2), walk.passed.at(-1)];
  if (!before || own?.toLocalDay !== last.localDay) return false;
  const share = shareOfUsual(walk, before, own);
  const isLow = reading.register > last.register && share < TOO_LOW;
  const isHigh = reading.register < last.register && share > TOO_HIGH;
  const use = useSoFar(walk.series, walk.passed.slice(0, -1), [before.localDay, reading.localDay]);
  const over = judgeReading(pairOf(walk.series, before, reading, use));
  if (over.judgement !== 'ok' || !(isLow || isHigh)) return false;
  walk.good.pop();
  walk.passed.pop();
  const asRead: JudgedReading = {
    judgement: isHigh ? 'implausibly high' : 'digit mistyped',
    litres: own.litres,
    likelyRegister: null,
    factor: null,
  };
  walk.judged.set(last, { ...told(last, before, asRead), seenLocalDay: reading.localDay });
  walk.doubted = last;
  accept(walk, before, reading, over);
  return true;
}

// The last volume over what was usual before it; not a number, and so neither low nor high, where that is not known.
function shareOfUsual(walk: Walk, before: SeriesReading, own: PassedVolume): number {
  const { usual } = useSoFar(walk.series, walk.passed.slice(0, -1), [before.localDay, own.toLocalDay]);
  return usual ? own.litres / (usual.litresPerDay * (own.toLocalDay - before.localDay)) : Number.NaN;
}

function doubt(walk: Walk, last: SeriesReading, reading: SeriesReading, judged: JudgedReading): void {
  const otherMeterId = otherMeterOf(reading, walk.series);
  const own = told(reading, last, judged);
  walk.judged.set(
    reading,
    otherMeterId === null ? own : { ...own, judgement: 'another meter', likelyRegister: null, factor: null, otherMeterId },
  );
  walk.doubted = reading;
}

function told(reading: SeriesReading, previous: SeriesReading, judged: JudgedReading): JudgedInSeries {
  return {
    localDay: reading.localDay,
    register: reading.register,
    judgement: judged.judgement,
    previous,
    litres: judged.litres,
    likelyRegister: judged.likelyRegister,
    factor: judged.factor,
    otherMeterId: null,
    seenLocalDay: reading.localDay,
    settledLocalDay: null,
    isRight: null,
  };
}

function asFirst(reading: SeriesReading): JudgedInSeries {
  return {
    localDay: reading.localDay,
    register: reading.register,
    judgement: 'first',
    previous: null,
    litres: null,
    likelyRegister: null,
    factor: null,
    otherMeterId: null,
    seenLocalDay: reading.localDay,
    settledLocalDay: null,
    isRight: null,
  };
}
