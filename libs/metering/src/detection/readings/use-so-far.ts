import type { ReadingExpectation } from '../../intervals/judge-reading.js';
import type { ReadingSeries } from './reading-series.js';

/** A volume that a meter has passed. */
export interface PassedVolume {
  readonly fromLocalDay: number;
  readonly toLocalDay: number;
  readonly litres: number;
}

/** Fewer intervals say nothing of what a meter passes: common practice. */
const FEWEST_INTERVALS = 3;

/** Use follows the seasons: only nearly a year says what is too much, and older years are other years. [d] */
const NEARLY_A_YEAR = 300;
const LAST_YEAR = 400;

/** Above the year's most by this share a volume is doubted from four times it: three times the most. An assumption. */
const MOST_RELATIVE_SD = 0.5;

/** Where only demand is known, which may be a fifth of what is really watered: from nine times it. An assumption. */
const DEMAND_RELATIVE_SD = 2;

/** The last three intervals say what is usual, to a third of it and a twentieth of the most: an assumption. */
const USUAL_RELATIVE_SD = 0.35;
const USUAL_SHARE_OF_MOST = 0.05;

/** What a meter passes, from its own history. */
export interface UseSoFar {
  /** Most that is believed. */
  readonly expectation: ReadingExpectation | null;
  /** What is usual at that time of the year. */
  readonly usual: ReadingExpectation | null;
  /** Whether `usual` follows demand, so that standing still can be told from winter. */
  readonly followsDemand: boolean;
}

/**
 * What a meter may pass between two instants, from what it has passed before and what is in demand.
 *
 * @param series - The meter, with demand where it is known. [L]
 * @param passed - Volumes between its good readings, oldest first. [L]
 * @param span - The two instants. [d]
 * @returns The most that is believed and what is usual; null where too little is known. [L/d]
 */
export function useSoFar(series: ReadingSeries, passed: readonly PassedVolume[], span: readonly [number, number]): UseSoFar {
  const year = passed.filter(({ toLocalDay }) => toLocalDay > span[0] - LAST_YEAR);
  const days = year.reduce((sum, { fromLocalDay, toLocalDay }) => sum + toLocalDay - fromLocalDay, 0);
  const most = Math.max(0, ...year.map(rateOf));
  const perDay = demandPerDay(series, span);
  const share = shareOfDemand(series, year);
  const follows = share !== null && perDay !== null;
  const demanded = (perDay ?? 0) * Math.max(1, share ?? 1);
  // What the settings say is asked only where it would tell another thing: they have to be replayed for it.
  const isHistory = days >= NEARLY_A_YEAR || (most > 0 && highOfHistory(most) >= highOfDemand(demanded) && staysAsItIs(series, span));
  return {
    expectation: believed(isHistory ? most : 0, demanded),
    usual: usualOf(follows ? share * perDay : recent(year), most),
    followsDemand: follows,
  };
}

// A timer whose settings nobody knows goes on as it did, however little is in demand.
function staysAsItIs({ programmedLitres }: ReadingSeries, [from, until]: readonly [number, number]): boolean {
  return programmedLitres !== undefined && programmedLitres !== null && programmedLitres(from, until) === null;
}

function demandPerDay({ demandLitres }: ReadingSeries, [from, until]: readonly [number, number]): number | null {
  const litres = demandLitres?.(from, until) ?? null;
  return litres === null ? null : litres / (until - from);
}

function usualOf(litresPerDay: number | null, most: number): ReadingExpectation | null {
  return litresPerDay === null ? null : { litresPerDay, sdLitresPerDay: USUAL_RELATIVE_SD * litresPerDay + USUAL_SHARE_OF_MOST * most };
}

function believed(most: number, demanded: number): ReadingExpectation | null {
  const high = Math.max(highOfHistory(most), highOfDemand(demanded));
  if (high <= 0) return null;
  const byHistory = highOfHistory(most) >= high;
  return byHistory
    ? { litresPerDay: most, sdLitresPerDay: MOST_RELATIVE_SD * most }
    : { litresPerDay: demanded, sdLitresPerDay: DEMAND_RELATIVE_SD * demanded };
}

const highOfHistory = (most: number): number => most * (1 + 4 * MOST_RELATIVE_SD);
const highOfDemand = (demanded: number): number => demanded * (1 + 4 * DEMAND_RELATIVE_SD);

const rateOf = ({ fromLocalDay, toLocalDay, litres }: PassedVolume): number => litres / (toLocalDay - fromLocalDay);

function recent(year: readonly PassedVolume[]): number | null {
  if (year.length < FEWEST_INTERVALS) return null;
  const last = year.slice(-FEWEST_INTERVALS);
  return last.reduce((sum, each) => sum + rateOf(each), 0) / last.length;
}

function shareOfDemand({ demandLitres }: ReadingSeries, year: readonly PassedVolume[]): number | null {
  if (year.length < FEWEST_INTERVALS) return null;
  const demands = year.map(({ fromLocalDay, toLocalDay }) => demandLitres?.(fromLocalDay, toLocalDay) ?? null);
  if (demands.some((demand) => demand === null)) return null;
  const demanded = demands.reduce<number>((sum, demand) => sum + (demand ?? 0), 0);
  return demanded > 0 ? year.reduce((sum, { litres }) => sum + litres, 0) / demanded : null;
}
