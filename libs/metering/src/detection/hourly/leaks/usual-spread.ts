import { robustSpread } from '../steps/robust-spread.js';

/** Days by which the usual spread is known, and the newest that do not count. */
export const spreadDays = { all: 35, newest: 4 } as const;
const LEAST_DAYS = 6;
/** After months without runs, the spread of those before is the best that is known. */
const RAN_WITHIN_DAYS = 240;
const RAN_DAYS = 20;
/** The spread is not believed below this share of the day's runs. Common practice, no source. */
const LEAST_SD_OF_RUNS = 0.025;
/** Spread of the runs' litres about the record while too few ran. Common practice, no source. */
const UNLEARNT_SD_OF_RUNS = 0.3;
/** The level of runs wanders by this share in a day, and by that at most: pressure. Common practice, no source. */
const WANDER_OF_DAY = 0.004;
const MOST_WANDER = 0.06;
/** A day that lacks half of its runs is no usual one. */
const HALF = 0.5;

/** How litres that nothing explains usually are: at rest, and as a share of what runs. */
export interface UsualSpread {
  readonly target: number;
  readonly restSd: number;
  readonly runShare: number;
  readonly runSd: number;
}

/** Litres of days that nothing explains, and those of their runs; NaN is not known. */
interface DayLitres {
  readonly litres: Float64Array;
  readonly runLitres: Float64Array;
}

/**
 * The usual spread by the days before one.
 *
 * @param past - Litres by day. [L]
 * @param day - The day, from 0. [–]
 * @returns The spread; null while fewer than six days are known. [L]
 */
export function spreadBefore(past: DayLitres, day: number): UsualSpread | null {
  const rested = restedBefore(past, day);
  const { shares: ran, middle: ranOn } = ranBefore(past, day);
  if (rested.length + ran.length < LEAST_DAYS) return null;
  const still = rested.length >= LEAST_DAYS ? robustSpread(rested) : { median: 0, sd: 0 };
  const moving = ran.length >= LEAST_DAYS ? robustSpread(ran) : { median: 0, sd: UNLEARNT_SD_OF_RUNS };
  return {
    target: still.median,
    restSd: still.sd * (1 + 2 / Math.max(1, rested.length)),
    runShare: moving.median,
    runSd: Math.hypot(Math.max(LEAST_SD_OF_RUNS, moving.sd * (1 + 2 / Math.max(1, ran.length))), wandered(day - ranOn)),
  };
}

function restedBefore({ litres, runLitres }: DayLitres, day: number): readonly number[] {
  const [from, until] = [Math.max(0, day - spreadDays.newest - spreadDays.all + 1), Math.max(0, day - spreadDays.newest + 1)];
  return [...litres.subarray(from, until)].filter((rest, at) => !Number.isNaN(rest) && (runLitres[from + at] ?? Number.NaN) <= 0);
}

// As a share of their runs: of the last weeks, or of the last on which any ran.
function ranBefore({ litres, runLitres }: DayLitres, day: number): { readonly shares: readonly number[]; readonly middle: number } {
  const ran: number[] = [];
  const days: number[] = [];
  const last = day - spreadDays.newest;
  for (let past = last; past >= 0 && past > last - RAN_WITHIN_DAYS; past--) {
    if (past <= last - spreadDays.all && ran.length >= RAN_DAYS) break;
    const [rest, runs] = [litres[past] ?? Number.NaN, runLitres[past] ?? Number.NaN];
    if (!(runs > 0 && rest > -HALF * runs)) continue;
    ran.push(rest / runs);
    days.push(past);
  }
  return { shares: ran, middle: days[Math.floor(days.length / 2)] ?? day };
}

const wandered = (days: number): number => Math.min(MOST_WANDER, WANDER_OF_DAY * Math.sqrt(days));
