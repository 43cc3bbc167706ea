import { defaultRelativeSd } from '../../uncertainty/default-relative-sd.js';
import type { UsageInterval } from '../../intervals/usage-interval.js';
import type { MeterEvidence } from '../evidence/meter-evidence.js';
import { type ProgrammedCourse, programmedCourse } from './programmed/programmed-course.js';
import { mixTogether, type ZoneMix, zoneMix } from './programmed/zone-mix.js';

/** Days of an interval that may lack settings or need before its volume is not known, as in the month account. */
const MOST_MISSING = 0.2;

/** Shorter intervals are joined: within a week the days of a program decide. [d] */
const FEWEST_DAYS = 6;

/** A month of readings: as long as that a season, a timer and a need go together. [d] */
export const monthOfReadings = 20;

/** A crew that walks the zones opens each of them about so long: common practice. [min] */
const WALK_MINUTES = 2;

/** Settings that were found changed ran since somebody changed them: a run, of a program that runs every second or third day, at least. Common practice. [d] */
const RUN_DAYS = 2.5;
/** Days before and after it by which it is known how much was changed. */
const WEEK = 7;

/** A timer that follows the weather follows its own: out of season it may differ from the need by this share of the mean need. An assumption. */
const OF_USUAL_NEED = 0.2;

/** Volumes of one meter between two readings or bills; null where not known. Variances are of what is no habit: register, ends, walks. */
export interface IntervalVolumes {
  readonly fromLocalDay: number;
  readonly toLocalDay: number;
  readonly days: number;
  /** Metered less the stated indoor share, where it is stated. [L] */
  readonly metered: number;
  readonly programmed: number | null;
  /** Sum of the squares of programmed water of the intervals joined in it: their noises are independent. [L²] */
  readonly programmedSquares: number;
  readonly needed: number | null;
  readonly startVariance: number;
  readonly endVariance: number;
  readonly ownVariance: number;
  readonly mix: ZoneMix;
}

/**
 * Volumes between a meter's readings or bills, in order of time, each of at least so many days: what is shorter is joined.
 *
 * Hourly usage is left out: its days are judged by their own instruments.
 *
 * @param evidence - All that is known of the meter. [L]
 * @param fewestDays - Days of an interval; six where nothing is said. [d]
 * @returns The intervals; where the indoor share of a mixed meter is not known, it is in their metered water and is learnt (`habitOnRecord`). [L]
 */
export function intervalVolumes(evidence: MeterEvidence, fewestDays = FEWEST_DAYS): readonly IntervalVolumes[] {
  const course = programmedCourse(evidence);
  const last = evidence.firstDay + evidence.days;
  return joined(evidence.intervals, fewestDays)
    .filter(({ fromLocalDay, toLocalDay }) => fromLocalDay >= evidence.firstDay && toLocalDay <= last)
    .map((interval) => volumesOf(evidence, course, interval));
}

/**
 * Two intervals as one: what lies between them cancels where one begins as the other ends.
 *
 * @param first - The earlier. [L]
 * @param second - The later. [L]
 * @returns Their sums; programmed is null where either is. [L]
 */
export function together(first: IntervalVolumes, second: IntervalVolumes): IntervalVolumes {
  const touch = first.toLocalDay === second.fromLocalDay;
  const sum = (one: number | null, other: number | null) => (one === null || other === null ? null : one + other);
  return {
    fromLocalDay: first.fromLocalDay,
    toLocalDay: second.toLocalDay,
    days: first.days + second.days,
    metered: first.metered + second.metered,
    programmed: sum(first.programmed, second.programmed),
    programmedSquares: first.programmedSquares + second.programmedSquares,
    needed: sum(first.needed, second.needed),
    startVariance: first.startVariance,
    endVariance: second.endVariance,
    mix: mixTogether(first, second),
    ownVariance: first.ownVariance + second.ownVariance + (touch ? 0 : first.endVariance + second.startVariance),
  };
}

function joined(intervals: readonly UsageInterval[], fewestDays: number): readonly UsageInterval[] {
  const found: UsageInterval[] = [];
  let held: UsageInterval | null = null;
  for (const next of intervals.filter(({ source }) => source !== 'usage')) {
    const whole: UsageInterval = held !== null && held.toLocalDay === next.fromLocalDay ? joinedWith(held, next) : next;
    held = whole.toLocalDay - whole.fromLocalDay < fewestDays ? whole : null;
    if (held === null) found.push(whole);
  }
  return found;
}

// The register between them is read once, so its rounding cancels.
function joinedWith(held: UsageInterval, next: UsageInterval): UsageInterval {
  return {
    ...next,
    fromLocalDay: held.fromLocalDay,
    litres: held.litres + next.litres,
    sdLitres: held.source === 'readings' && next.source === 'readings' ? next.sdLitres : Math.hypot(held.sdLitres, next.sdLitres),
  };
}

function volumesOf(evidence: MeterEvidence, course: ProgrammedCourse, interval: UsageInterval): IntervalVolumes {
  const { fromLocalDay, toLocalDay } = interval;
  const days = toLocalDay - fromLocalDay;
  const known = course.knownDaysUntil(toLocalDay) - course.knownDaysUntil(fromLocalDay);
  const ran = course.litresUntil(toLocalDay) - course.litresUntil(fromLocalDay);
  const programmed = known < (1 - MOST_MISSING) * days ? null : (ran * days) / known;
  const uncertain = (programmed ?? 0) * Math.max(1 - known / days, estimatedShare(evidence, interval));
  const indoor = (evidence.kind === 'mixed' ? (evidence.indoorLitresPerDay ?? 0) : 0) * days;
  const walk = evidence.zones.reduce((sum, { flowLPerMin }) => sum + (flowLPerMin ?? 0) * WALK_MINUTES, 0);
  const isBill = interval.source === 'bills';
  return {
    fromLocalDay,
    toLocalDay,
    days,
    metered: interval.litres - indoor,
    programmed,
    programmedSquares: (programmed ?? 0) ** 2,
    needed: sumOfDays(evidence.neededLitres, evidence.firstDay, interval),
    startVariance: course.endVariance(fromLocalDay, isBill),
    endVariance: course.endVariance(toLocalDay, isBill),
    mix: zoneMix(evidence, fromLocalDay, toLocalDay),
    ownVariance:
      interval.sdLitres ** 2 +
      walk ** 2 +
      foundVariance(evidence, course, interval) +
      (defaultRelativeSd.filled * uncertain) ** 2 +
      (defaultRelativeSd.indoor.winter * indoor) ** 2 +
      (OF_USUAL_NEED * estimatedShare(evidence, interval) * usualUntil(course, evidence.firstDay, toLocalDay) * days) ** 2,
  };
}

// A run may have been by the settings that were found, or by those before.
function foundVariance({ foundDays = [] }: MeterEvidence, course: ProgrammedCourse, { fromLocalDay, toLocalDay }: UsageInterval): number {
  const perDay = (from: number, until: number): number => {
    const known = course.knownDaysUntil(until) - course.knownDaysUntil(from);
    return known > 0 ? (course.litresUntil(until) - course.litresUntil(from)) / known : 0;
  };
  return foundDays
    .filter((day) => day >= Math.floor(fromLocalDay) && day <= toLocalDay)
    .reduce((sum, day) => sum + (RUN_DAYS * (perDay(day + 1, day + 1 + WEEK) - perDay(day - WEEK, day))) ** 2, 0);
}

// Litres of a mean day so far.
function usualUntil(course: ProgrammedCourse, firstDay: number, localDay: number): number {
  const known = course.knownDaysUntil(localDay) - course.knownDaysUntil(firstDay);
  return known > 0 ? (course.litresUntil(localDay) - course.litresUntil(firstDay)) / known : 0;
}

function estimatedShare({ programmedIsEstimate, firstDay }: MeterEvidence, { fromLocalDay, toLocalDay }: UsageInterval): number {
  let marked = 0;
  for (let day = Math.floor(fromLocalDay); day < toLocalDay; day += 1) marked += programmedIsEstimate[day - firstDay] ?? 0;
  return Math.min(1, marked / (toLocalDay - fromLocalDay));
}

function sumOfDays(values: Float64Array, firstDay: number, { fromLocalDay, toLocalDay }: UsageInterval): number | null {
  let [litres, known] = [0, 0];
  for (let day = Math.floor(fromLocalDay); day < toLocalDay; day += 1) {
    const share = Math.min(day + 1, toLocalDay) - Math.max(day, fromLocalDay);
    const value = values[day - firstDay] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    litres += share * value;
    known += share;
  }
  const days = toLocalDay - fromLocalDay;
  return known < (1 - MOST_MISSING) * days ? null : (litres * days) / known;
}
