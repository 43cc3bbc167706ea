import type { StepUsage } from '@rillbook/metering/detection/evidence/meter-evidence.js';
import { litresFrom } from '@rillbook/units/volume.js';
import type { UsageDayFact } from '../gather/property-facts.js';
import type { PropertyCalendar } from './property-calendar.js';

const SECONDS_PER_MINUTE = 60;
/** A longer step tells nothing of nights and starts. [min] */
const LONGEST_STEP = 60;
/** More decimals are an arithmetic's, not a register's. */
const MOST_DECIMALS = 6;
const DUST = 1e-6;

/** A meter's feed as equal steps over a span of days; null where there is none, or its steps are longer than an hour. */
export function usageSteps(feed: readonly UsageDayFact[], calendar: PropertyCalendar): StepUsage | null {
  const { firstDay, days, midnights } = calendar;
  const own = feed.filter(({ dayNumber }) => dayNumber >= firstDay && dayNumber < firstDay + days);
  const stepMinutes = usualStep(own);
  if (stepMinutes === null) return null;
  const firstMinute = midnights[own[0]!.dayNumber - firstDay]!;
  const lastMinute = midnights[own.at(-1)!.dayNumber - firstDay + 1]!;
  const litres = new Float64Array(Math.ceil((lastMinute - firstMinute) / stepMinutes)).fill(Number.NaN);
  for (const day of own) addDay(litres, day, { firstMinute, stepMinutes, midnight: midnights[day.dayNumber - firstDay]! });
  return { firstMinute, stepMinutes, litres, resolutionLitres: feedResolution(own) };
}

/** The most common length of the feed's intervals. [min] */
function usualStep(feed: readonly UsageDayFact[]): number | null {
  const counts = new Map<number, number>();
  for (const { lengthSeconds } of feed) for (const seconds of lengthSeconds) counts.set(seconds, (counts.get(seconds) ?? 0) + 1);
  const [usual] = [...counts].sort((a, b) => b[1] - a[1] || a[0] - b[0])[0] ?? [];
  if (usual === undefined) return null;
  const minutes = usual / SECONDS_PER_MINUTE;
  return minutes > 0 && minutes <= LONGEST_STEP ? minutes : null;
}

interface Place {
  readonly firstMinute: number;
  readonly stepMinutes: number;
  readonly midnight: number;
}

// What is shorter than a step is added up; what is longer is divided evenly, since nobody knows when within it.
function addDay(litres: Float64Array, day: UsageDayFact, { firstMinute, stepMinutes, midnight }: Place): void {
  day.startSeconds.forEach((start, at) => {
    const from = (midnight + start / SECONDS_PER_MINUTE - firstMinute) / stepMinutes;
    const steps = day.lengthSeconds[at]! / SECONDS_PER_MINUTE / stepMinutes;
    const volume = litresFrom(day.volumes[at]!, day.unit);
    for (let step = Math.floor(from + DUST); step < from + steps - DUST && step < litres.length; step++) {
      const share = (Math.min(step + 1, from + steps) - Math.max(step, from)) / steps;
      if (step >= 0) litres[step] = (Number.isNaN(litres[step]) ? 0 : litres[step]!) + volume * share;
    }
  });
}

/** The least step in which the feed tells volumes: the largest number of which all of them are multiples; null where none can be told. [L] */
function feedResolution(feed: readonly UsageDayFact[]): number | null {
  const { unit } = feed[0]!;
  if (feed.some((day) => day.unit !== unit)) return null;
  for (let decimals = 0; decimals <= MOST_DECIMALS; decimals++) {
    const scale = 10 ** decimals;
    const divisor = commonDivisor(feed, scale);
    if (divisor === null) continue;
    return divisor === 0 ? null : litresFrom(divisor / scale, unit);
  }
  return null;
}

// Null where a volume is no whole number at this scale.
function commonDivisor(feed: readonly UsageDayFact[], scale: number): number | null {
  let divisor = 0;
  for (const { volumes } of feed) {
    for (const volume of volumes) {
      const whole = Math.round(volume * scale);
      if (Math.abs(volume * scale - whole) > DUST * Math.max(1, whole)) return null;
      divisor = greatestCommonDivisor(divisor, whole);
    }
  }
  return divisor;
}

function greatestCommonDivisor(one: number, other: number): number {
  let [a, b] = [Math.abs(one), Math.abs(other)];
  while (b > 0) [a, b] = [b, a % b];
  return a;
}
