import type { EvidenceRun, MeterEvidence } from '../../evidence/meter-evidence.js';
import { firstBeginningAt } from './first-beginning-at.js';

/** Clocks of controllers and of people who read differ by this much: common practice. [min] */
const CLOCK_MINUTES = 60;

/** A bill says the day, not the hour: its reading fell within half a day of it. [min] */
const BILL_MINUTES = 720;

/** A uniform distribution of width a has the variance a²/12 (JCGM 100:2008, 4.3.7). */
const UNIFORM = 12;

/** Water that settings put out between the first day and an instant, and how it comes in by days. */
export interface ProgrammedCourse {
  /** Litres of known days before an instant. [L] */
  readonly litresUntil: (localDay: number) => number;
  /** How many days before an instant are known. [d] */
  readonly knownDaysUntil: (localDay: number) => number;
  /** Variance of the water that may have run on the other side of an instant. [L²] */
  readonly endVariance: (localDay: number, isBill: boolean) => number;
}

/**
 * The course of a meter's programmed water, so that intervals may end at any hour.
 *
 * Where runs are known, a day's water is divided at the hour as they ran; else by the elapsed share f of the day, and since all of it may
 * have run before or after, with the variance f·(1 − f)·P².
 *
 * @param evidence - Programmed water by day, runs and midnights. [L] and [min]
 * @returns The course. [L]
 */
export function programmedCourse(evidence: MeterEvidence): ProgrammedCourse {
  const { firstDay, days, programmedLitres } = evidence;
  const litres = new Float64Array(days + 1);
  const known = new Float64Array(days + 1);
  for (let day = 0; day < days; day += 1) {
    const value = programmedLitres[day] ?? Number.NaN;
    litres[day + 1] = (litres[day] ?? 0) + (Number.isNaN(value) ? 0 : value);
    known[day + 1] = (known[day] ?? 0) + (Number.isNaN(value) ? 0 : 1);
  }
  const shareOfDay = sharesByRuns(evidence);
  const within = (localDay: number) => Math.min(days, Math.max(0, localDay - firstDay));
  const until = (sums: Float64Array, localDay: number, share: (day: number, fraction: number) => number) => {
    const at = within(localDay);
    const day = Math.min(days - 1, Math.floor(at));
    const before = sums[day] ?? 0;
    return before + ((sums[day + 1] ?? before) - before) * share(day, at - day);
  };
  const litresUntil = (localDay: number) => until(litres, localDay, (day, fraction) => shareOfDay(day, fraction) ?? fraction);
  return {
    litresUntil,
    knownDaysUntil: (localDay) => until(known, localDay, (_, fraction) => fraction),
    endVariance: (localDay, isBill) => {
      const reach = (isBill ? BILL_MINUTES : CLOCK_MINUTES) / 1440;
      const near = litresUntil(localDay + reach) - litresUntil(localDay - reach);
      const day = Math.floor(within(localDay));
      const fraction = within(localDay) - day;
      const ofDay = shareOfDay(day, fraction) === null ? (programmedLitres[day] ?? 0) || 0 : 0;
      return near ** 2 / UNIFORM + fraction * (1 - fraction) * ofDay ** 2;
    },
  };
}

interface RunOfDay {
  readonly begin: number;
  readonly end: number;
  readonly flow: number;
}

// Share of a day's water that ran before a fraction of it; null where no run of the day is known.
function sharesByRuns({ midnights, runs, zones }: MeterEvidence): (day: number, fraction: number) => number | null {
  const flows = new Map(zones.map(({ zoneId, flowLPerMin }) => [zoneId, flowLPerMin ?? 0]));
  const longest = runs.reduce((most, { begin, end }) => Math.max(most, end - begin), 0);
  const known = new Map<number, readonly RunOfDay[]>();
  const runsOf = (day: number): readonly RunOfDay[] => {
    const present = known.get(day);
    if (present) return present;
    const [begin, end] = [midnights[day] ?? 0, midnights[day + 1] ?? 0];
    const own: RunOfDay[] = [];
    for (let at = firstBeginningAt(runs, begin - longest); at < runs.length; at += 1) {
      const run = runs[at] as EvidenceRun;
      if (run.begin >= end) break;
      if (run.end > begin) own.push({ begin: Math.max(run.begin, begin), end: run.end, flow: flows.get(run.zoneId) ?? 0 });
    }
    known.set(day, own);
    return own;
  };
  return (day, fraction) => {
    const [begin, end] = [midnights[day] ?? 0, midnights[day + 1] ?? 0];
    const own = runsOf(day);
    const ran = (until: number) => own.reduce((sum, run) => sum + run.flow * Math.max(0, Math.min(run.end, until) - run.begin), 0);
    const whole = ran(end);
    return whole > 0 ? ran(begin + fraction * (end - begin)) / whole : null;
  };
}
