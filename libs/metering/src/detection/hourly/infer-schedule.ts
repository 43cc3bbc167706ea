import { weekdayOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import type { StepUsage } from '../evidence/meter-evidence.js';
import { quantile } from './steps/robust-spread.js';
import { type LocalDays, stepDays } from './steps/step-days.js';
import { valueAt } from './steps/value-at.js';

/** Days from which a schedule is inferred, the newest: settings do not stay longer. Common practice, no source. */
const FROM_DAYS = 28;
const LEAST_DAYS = 14;
/** Water counts from this share of the flow that the fullest steps reach: a hose and a leak do not. */
const SHARE_OF_FULL = 0.1;
const FULLEST = 0.98;
/** Water in one piece is of the same start within this time of the clock. [min] */
const SAME_START_MINUTES = 15;
/** A start is believed from this many days. */
const LEAST_STARTS = 3;
/** A weekday is of the program when it watered on at least this share of its occurrences. */
const WEEKDAY_SHARE = 0.6;
/** Longest interval of days that timers offer. */
const LONGEST_INTERVAL = 31;
/** Less sure programs are not offered. */
const LEAST_CONFIDENCE = 0.7;
const DAYS_OF_WEEK = 7;

/** Days on which a program waters: weekdays (Monday 0), or every so many days from a day. */
export type InferredDays = { readonly weekdays: readonly number[] } | { readonly everyDays: number; readonly fromLocalDay: number };

/** A program as usage shows it, to be confirmed by a person. `confidence` is the share of its days and of its water that agree. */
export interface InferredProgram {
  readonly program: string;
  readonly days: InferredDays;
  readonly starts: readonly { readonly clockMinute: number; readonly minutes: number }[];
  readonly confidence: number;
}

interface Start {
  readonly clocks: number[];
  readonly minutes: number[];
  readonly days: number[];
}

interface Found {
  readonly days: InferredDays;
  readonly confidence: number;
  readonly start: Start;
}

/**
 * Infers programs from usage alone, where settings are not known: water that recurs at the same time of the clock, by weekdays or by an interval.
 *
 * @param usage - Usage by steps. [code]
 * @param calendar - The local days of the usage. [code]
 * @returns Programs to be confirmed, the surest first; none where nothing recurs. [code]
 */
export function inferSchedule(usage: StepUsage, calendar: LocalDays): readonly InferredProgram[] {
  const fed = calendar.midnights.findIndex((midnight) => midnight >= usage.firstMinute);
  const first = Math.max(fed, calendar.days - FROM_DAYS);
  if (fed < 0 || calendar.days - first < LEAST_DAYS) return [];
  const found = startsOf(usage, calendar, first).flatMap((start) => {
    const best = daysOf(start, calendar, first);
    return best && best.confidence >= LEAST_CONFIDENCE ? [{ ...best, start }] : [];
  });
  const byDays = new Map<string, Found[]>();
  for (const one of found) {
    const key = JSON.stringify(one.days);
    byDays.set(key, [...(byDays.get(key) ?? []), one]);
  }
  const programs = [...byDays.values()].sort((a, b) => confidenceOf(b) - confidenceOf(a));
  return programs.flatMap((ofDays, place) => (ofDays[0] ? [programOf(ofDays, ofDays[0].days, place)] : []));
}

function confidenceOf(found: readonly Found[]): number {
  return found.reduce((least, { confidence }) => Math.min(least, confidence), 1);
}

function programOf(found: readonly Found[], days: InferredDays, place: number): InferredProgram {
  return {
    program: String.fromCharCode('A'.charCodeAt(0) + place),
    days,
    starts: found
      .map(({ start }) => ({ clockMinute: quantile(start.clocks, 0.5), minutes: quantile(start.minutes, 0.5) }))
      .sort((a, b) => a.clockMinute - b.clockMinute),
    confidence: confidenceOf(found),
  };
}

function startsOf(usage: StepUsage, calendar: LocalDays, first: number): readonly Start[] {
  const { firstStep, clockMinute } = stepDays(calendar, usage);
  const begin = valueAt(firstStep, first);
  const known = usage.litres.slice(begin).filter((litres) => litres > 0);
  const full = quantile(known, FULLEST);
  const hot = Math.max(SHARE_OF_FULL * full, 2 * (usage.resolutionLitres ?? 0));
  const starts: Start[] = [];
  for (let day = first; day < calendar.days; day++) {
    for (let step = valueAt(firstStep, day); step < valueAt(firstStep, day + 1); step++) {
      if (!(valueAt(usage.litres, step) >= hot) || (step > begin && !(valueAt(usage.litres, step - 1) < hot))) continue;
      const litres = pieceFrom(usage.litres, step, hot);
      const head = Math.min(1, valueAt(litres, 0) / Math.max(valueAt(litres, 1), valueAt(litres, 0)));
      const minutes = durationOf(litres) * usage.stepMinutes;
      enter(starts, { day, clock: valueAt(clockMinute, step) + (1 - head) * usage.stepMinutes, minutes });
    }
  }
  return starts.filter(({ days }) => days.length >= LEAST_STARTS);
}

function pieceFrom(litres: Float64Array, from: number, hot: number): Float64Array {
  let until = from;
  while (until < litres.length && valueAt(litres, until) >= hot) until++;
  return litres.slice(from, until);
}

// Steps that the water filled: the first and the last in part, by the flow of their neighbours.
function durationOf(litres: Float64Array): number {
  const last = litres.length - 1;
  if (last < 1) return 1;
  const head = Math.min(1, valueAt(litres, 0) / valueAt(litres, 1));
  const tail = Math.min(1, valueAt(litres, last) / valueAt(litres, last - 1));
  return last < 2 ? Math.max(head, 1) + Math.min(tail, head < 1 ? 1 : tail) : last - 1 + head + tail;
}

function enter(starts: Start[], { day, clock, minutes }: { readonly day: number; readonly clock: number; readonly minutes: number }): void {
  const same = starts.find(({ clocks }) => Math.abs(quantile(clocks, 0.5) - clock) <= SAME_START_MINUTES);
  if (!same) starts.push({ clocks: [clock], minutes: [minutes], days: [day] });
  else if (same.days[same.days.length - 1] !== day) {
    same.clocks.push(clock);
    same.minutes.push(minutes);
    same.days.push(day);
  }
}

// The simplest rule of days that agrees best: daily, every so many days, or weekdays.
function daysOf(start: Start, { firstDay, days }: LocalDays, first: number): Omit<Found, 'start'> | null {
  const watered = new Set(start.days);
  const all = Array.from({ length: days - first }, (_, at) => first + at);
  const latest = start.days[start.days.length - 1] ?? first;
  const weekdays = Array.from({ length: DAYS_OF_WEEK }, (_, weekday) => weekday).filter((weekday) => {
    const of = all.filter((day) => weekdayOfDayNumber(firstDay + day) === weekday);
    return of.filter((day) => watered.has(day)).length >= WEEKDAY_SHARE * of.length;
  });
  const rules: (readonly [InferredDays, (day: number) => boolean])[] = [];
  for (let every = 1; every <= Math.min(LONGEST_INTERVAL, (days - first) / LEAST_STARTS); every++)
    rules.push([{ everyDays: every, fromLocalDay: firstDay + first + ((latest - first) % every) }, (day) => (latest - day) % every === 0]);
  rules.push([{ weekdays }, (day) => weekdays.includes(weekdayOfDayNumber(firstDay + day))]);
  let best: Omit<Found, 'start'> | null = null;
  for (const [rule, waters] of rules) {
    const confidence = agreement(all, watered, waters);
    if (confidence > (best?.confidence ?? 0)) best = { days: rule, confidence };
  }
  return best;
}

// Days that agree, as share of those that either the rule or the water names.
function agreement(all: readonly number[], watered: ReadonlySet<number>, waters: (day: number) => boolean): number {
  const named = all.filter((day) => watered.has(day) || waters(day));
  return named.length ? named.filter((day) => watered.has(day) && waters(day)).length / named.length : 0;
}
