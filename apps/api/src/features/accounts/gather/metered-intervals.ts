import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { type JudgedReading, type ReadingExpectation, judgeReading } from '@rillbook/metering/intervals/judge-reading.js';
import { resolutionSd } from '@rillbook/metering/intervals/register-volume.js';
import type { UsageInterval } from '@rillbook/metering/intervals/usage-interval.js';
import { litresFrom } from '@rillbook/units/volume.js';
import type { EtoSeries } from './eto-series.js';
import type { MeterChain } from './meter-chains.js';
import type { BillFact, MeterFact, ReadingFact, UsageDayFact } from './property-facts.js';

/** A reading that cannot be right, with what was probably meant. It is left out until a person decides. */
export interface DoubtfulReading {
  readonly readingId: string;
  readonly meterId: string;
  readonly localDay: number;
  readonly register: number;
  /** the good register before it; null when it is the meter's first */
  readonly previous: { readonly localDay: number; readonly register: number } | null;
  readonly judged: JudgedReading;
}

/** The weather over a property, and what its plants may need of it. */
export interface Demand {
  readonly eto: EtoSeries;
  /** water that all zones need for a mm of reference ET without rain; 0 when no zone is on record [L/mm] */
  readonly litresPerMm: number;
}

interface Register {
  readonly readingId: string | null;
  readonly localDay: number;
  readonly register: number;
}

/** What a meter passed per mm of reference ET before is what it is expected to pass: this many intervals must agree first. */
const LEAST_HISTORY = 3;
const MOST_HISTORY = 6;
/** How far the expectation may be off, as a share of it: a leak can pass several times the need, and is no misread. An assumption. */
const EXPECTATION_RELATIVE_SD = 1;
const SECONDS_PER_DAY = 86_400;
const RIGHT = new Set(['ok', 'rollover', 'stuck']);

/** The registers of one meter in order, with those of its installation and removal. */
function registersOf(meter: MeterFact, readings: readonly ReadingFact[]): Register[] {
  const list: Register[] = readings
    .filter((reading) => reading.meterId === meter.id)
    .map((reading) => ({ readingId: reading.id, localDay: reading.localDay, register: reading.register }));
  // A swap happens in the day; noon is within half a day of it.
  if (meter.installedOn && meter.firstRegister !== null)
    list.push({ readingId: null, localDay: dayNumberOfDate(meter.installedOn) + 0.5, register: meter.firstRegister });
  if (meter.removedOn && meter.lastRegister !== null)
    list.push({ readingId: null, localDay: dayNumberOfDate(meter.removedOn) + 0.5, register: meter.lastRegister });
  return list
    .sort((a, b) => a.localDay - b.localDay)
    .filter((register, index, all) => index === 0 || register.localDay > all[index - 1]!.localDay);
}

/**
 * What a meter is expected to pass between two readings: what it passed per mm of reference ET before, or what the plants under it may need,
 * whichever is more. In winter a meter stands still, and its history says nothing of spring.
 */
function expectation(good: readonly UsageInterval[], from: number, until: number, demand: Demand): ReadingExpectation | null {
  const { eto, litresPerMm } = demand;
  const expected = eto.etoOf(from, until);
  const history = good.slice(-MOST_HISTORY);
  const known = history.map((interval) => eto.etoOf(interval.fromLocalDay, interval.toLocalDay));
  if (expected === null || litresPerMm <= 0 || history.length < LEAST_HISTORY || known.some((value) => value === null)) return null;
  const passed = history.reduce((sum, interval) => sum + interval.litres, 0);
  const evaporated = known.reduce<number>((sum, value) => sum + value!, 0);
  const perMm = Math.max(litresPerMm, passed / Math.max(1, evaporated));
  const litresPerDay = (perMm * expected) / (until - from);
  return { litresPerDay, sdLitresPerDay: EXPECTATION_RELATIVE_SD * litresPerDay };
}

/** What a register says beside the last good one; null when it is the first. */
function judged(
  meter: MeterFact,
  last: Register | null,
  next: Register,
  good: readonly UsageInterval[],
  demand: Demand,
): JudgedReading | null {
  if (meter.digits !== null && next.register >= 10 ** meter.digits)
    return { judgement: 'implausibly high', litres: null, likelyRegister: null, factor: null };
  if (!last) return null;
  return judgeReading({
    previousRegister: last.register,
    nextRegister: next.register,
    elapsedDays: next.localDay - last.localDay,
    digits: meter.digits,
    litresPerRegisterUnit: litresFrom(meter.multiplier, meter.unit),
    expectation: expectation(good, last.localDay, next.localDay, demand),
  });
}

/** Volumes between a meter's readings; a doubtful reading is left out and its neighbours are joined over it. */
function readingIntervals(
  meter: MeterFact,
  readings: readonly ReadingFact[],
  demand: Demand,
): { intervals: UsageInterval[]; doubtful: DoubtfulReading[] } {
  const intervals: UsageInterval[] = [];
  const doubtful: DoubtfulReading[] = [];
  const sdLitres = resolutionSd(meter.resolution ?? 1, { unit: meter.unit, multiplier: meter.multiplier, digits: meter.digits });
  let last: Register | null = null;
  for (const next of registersOf(meter, readings)) {
    const verdict = judged(meter, last, next, intervals, demand);
    const { readingId, localDay, register } = next;
    if (verdict && (verdict.litres === null || !RIGHT.has(verdict.judgement))) {
      if (readingId) doubtful.push({ readingId, meterId: meter.id, localDay, register, previous: last, judged: verdict });
      continue;
    }
    if (last && verdict)
      intervals.push({ fromLocalDay: last.localDay, toLocalDay: localDay, litres: verdict.litres!, sdLitres, source: 'readings' });
    last = next;
  }
  return { intervals, doubtful };
}

/**
 * A day's feed as volumes without holes: neighbouring intervals are joined.
 *
 * @param nextSeconds the length of the day after, into which the last interval may reach: 23, 24 or 25 hours
 */
function usageIntervals(day: UsageDayFact, nextSeconds: number): UsageInterval[] {
  const joined: { from: number; to: number; litres: number }[] = [];
  day.startSeconds.forEach((start, index) => {
    const end = start + day.lengthSeconds[index]!;
    const litres = litresFrom(day.volumes[index]!, day.unit);
    const last = joined.at(-1);
    if (last && last.to === start) Object.assign(last, { to: end, litres: last.litres + litres });
    else joined.push({ from: start, to: end, litres });
  });
  return joined.map(({ from, to, litres }) => ({
    fromLocalDay: day.dayNumber + from / day.daySeconds,
    toLocalDay: to <= day.daySeconds ? day.dayNumber + to / day.daySeconds : day.dayNumber + 1 + (to - day.daySeconds) / nextSeconds,
    litres,
    sdLitres: 0,
    source: 'usage',
  }));
}

/** All volumes that one place of measuring has on record, of every source, and the readings that cannot be right. */
export function meteredIntervals(
  chain: MeterChain,
  facts: { readings: readonly ReadingFact[]; usageDays: readonly UsageDayFact[]; bills: readonly BillFact[] },
  demand: Demand,
): { intervals: UsageInterval[]; doubtful: DoubtfulReading[] } {
  const ids = new Set(chain.meters.map((meter) => meter.id));
  const fromReadings = chain.meters.map((meter) => readingIntervals(meter, facts.readings, demand));
  const feed = facts.usageDays.filter((day) => ids.has(day.meterId));
  const seconds = new Map(feed.map((day) => [`${day.meterId} ${day.dayNumber}`, day.daySeconds]));
  const usage = feed.flatMap((day) => usageIntervals(day, seconds.get(`${day.meterId} ${day.dayNumber + 1}`) ?? SECONDS_PER_DAY));
  const bills = facts.bills
    .filter((bill) => ids.has(bill.meterId))
    .map(
      (bill): UsageInterval => ({
        fromLocalDay: bill.startDay,
        toLocalDay: bill.endDay,
        litres: bill.litres,
        sdLitres: 0,
        source: 'bills',
      }),
    );
  return {
    intervals: [...fromReadings.flatMap((part) => part.intervals), ...usage, ...bills],
    doubtful: fromReadings.flatMap((part) => part.doubtful),
  };
}
