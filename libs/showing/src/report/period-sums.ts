import type { GapName, GivenGap, GivenMonth, GivenVolume, GivenVolumes, ReportPeriod } from './report-input.js';

const VOLUMES = ['allowed', 'needed', 'programmed', 'metered'] as const;
const GAPS = ['landscapeGap', 'settingsGap', 'unexplainedGap', 'aboveNeed', 'aboveAllowed'] as const;

/** The volumes and gaps of a period: sums of its months, each known only where it is known in every month. */
export interface PeriodSums extends GivenVolumes, Readonly<Record<GapName, GivenGap>> {
  readonly months: readonly GivenMonth[];
  readonly etoMm: number | null;
  readonly rainMm: number | null;
}

/** A property's sums with its name. */
export interface NamedSums {
  readonly id: string;
  readonly name: string;
  readonly sums: PeriodSums;
}

/** The code of a reason that the accounts do not have: some month of the period has no account. */
export const MONTHS_MISSING = 'months-missing';

/** All months of a period, YYYY-MM. */
export function monthsOf({ from, until }: ReportPeriod): string[] {
  const list: string[] = [];
  for (let month = from; month <= until && list.length < 120; month = nextMonth(month)) list.push(month);
  return list;
}

export function nextMonth(month: string, steps = 1): string {
  const at = Number(month.slice(0, 4)) * 12 + Number(month.slice(5, 7)) - 1 + steps;
  return `${String(Math.floor(at / 12)).padStart(4, '0')}-${String((at % 12) + 1).padStart(2, '0')}`;
}

/** Area, flow and plant factor are the same in every month: standard deviations add up, they do not average out. */
export function sumsOf(months: readonly GivenMonth[], period: ReportPeriod): PeriodSums {
  const wanted = monthsOf(period);
  const chosen = months.filter(({ month }) => month >= period.from && month <= period.until);
  const isWhole = chosen.length === wanted.length;
  const volumes = Object.fromEntries(
    VOLUMES.map((name) => [
      name,
      volumeOf(
        chosen.map((month) => month[name]),
        isWhole,
      ),
    ]),
  );
  const gaps = Object.fromEntries(
    GAPS.map((name) => [
      name,
      gapOf(
        chosen.map((month) => month[name]),
        isWhole,
      ),
    ]),
  );
  return {
    ...(volumes as unknown as GivenVolumes),
    ...(gaps as unknown as Record<GapName, GivenGap>),
    months: chosen,
    etoMm: isWhole ? sum(chosen.map(({ etoMm }) => etoMm)) : null,
    rainMm: isWhole ? sum(chosen.map(({ rainMm }) => rainMm)) : null,
  };
}

/** The sums of several properties, each known only where every property's is. They share weather and method: their errors add up. */
export function sumsOfAll(all: readonly PeriodSums[]): PeriodSums {
  const volume = (name: (typeof VOLUMES)[number]): GivenVolume =>
    volumeOf(
      all.map((each) => each[name]),
      true,
    );
  const gap = (name: GapName): GivenGap =>
    gapOf(
      all.map((each) => each[name]),
      true,
    );
  return {
    ...(Object.fromEntries(VOLUMES.map((name) => [name, volume(name)])) as unknown as GivenVolumes),
    ...(Object.fromEntries(GAPS.map((name) => [name, gap(name)])) as unknown as Record<GapName, GivenGap>),
    months: [],
    etoMm: null,
    rainMm: null,
  };
}

function volumeOf(list: readonly GivenVolume[], isWhole: boolean): GivenVolume {
  const litres = isWhole ? sum(list.map((each) => each.litres)) : null;
  const reason = list.find((each) => each.litres === null)?.reason ?? (isWhole ? null : MONTHS_MISSING);
  const estimated = litres ? list.reduce((total, each) => total + each.estimatedShare * (each.litres ?? 0), 0) / litres : 0;
  return {
    litres,
    sdLitres: litres === null ? null : sum(list.map((each) => each.sdLitres)),
    estimatedShare: estimated,
    reason: litres === null ? reason : null,
  };
}

function gapOf(list: readonly GivenGap[], isWhole: boolean): GivenGap {
  const litres = isWhole ? sum(list.map((each) => each.litres)) : null;
  if (litres === null) return { litres, sdLitres: null, money: null };
  return { litres, sdLitres: sum(list.map((each) => each.sdLitres)), money: sum(list.map((each) => each.money)) };
}

/** Null where one is not known, and where there is none. */
export const sum = (values: readonly (number | null)[]): number | null =>
  values.length === 0 ? null : values.reduce<number | null>((total, value) => (total === null || value === null ? null : total + value), 0);
