import { dayNumber } from '../day-number.js';
import { isSound, type JudgedDay } from '../quality/judge-weather-days.js';
import type { WeatherDay } from '../weather-day.js';
import { type CommonValue, type NeighbourTransfer, neighbourTransfer, type TransferForm } from './neighbour-transfer.js';

/** How each value is carried over. Temperatures and humidities differ by a sum, wind and radiation by a factor. */
const FORMS = {
  tmax: 'difference',
  tmin: 'difference',
  dewPoint: 'difference',
  rhmax: 'difference',
  rhmin: 'difference',
  wind: 'ratio',
  solar: 'ratio',
} as const satisfies Readonly<Record<string, TransferForm>>;

/** A value that a neighbour can stand in for; rain is not carried over by a rule. */
export type CarriedValue = keyof typeof FORMS;

const NAMES = Object.keys(FORMS) as CarriedValue[];

/** The common days lie this many days before and after the hole: the same season, and a filled day stays as it is once they are over. */
const REACH = 45;

/** Values cannot pass these, whatever the rule says. */
const LIMITS: Partial<Record<CarriedValue, readonly [number, number]>> = {
  rhmax: [1, 100],
  rhmin: [0, 100],
  wind: [0, 50],
  solar: [0, 46],
};

/**
 * A carried value is never surer than this, however well the two stations agree on the common days: sums by themselves, shares of the value for
 * what is carried by a factor. About a sensor's own error. Common practice, no source. [°C], [%] and [–]
 */
const LEAST_SD = {
  tmax: 0.5,
  tmin: 0.5,
  dewPoint: 0.5,
  rhmax: 3,
  rhmin: 3,
  wind: 0.1,
  solar: 0.05,
} as const satisfies Readonly<Record<CarriedValue, number>>;

/** A value carried over, with how far it may be off. */
export type CarriedAmount = { readonly amount: number; readonly sd: number; readonly commonDays: number };

/** What a neighbour tells of a day. */
export type NeighbourValues = Readonly<Partial<Record<CarriedValue, CarriedAmount>>>;

/**
 * What a neighbour tells of the values that a day lacks, learnt on the common days of the 45 days before and after.
 *
 * @param date - The day that lacks values. [code]
 * @param lacking - Their names. [code]
 * @param own - The station's judged days, by day number. [any]
 * @param others - The neighbour's, by day number. [any]
 * @returns Value and standard deviation by name; nothing for what the neighbour lacks, doubts or tells nothing of. [any]
 * @throws {DomainError} `DATE_OUT_OF_DOMAIN`.
 * @source As `neighbourTransfer`.
 */
export function neighbourValues(
  date: string,
  lacking: readonly CarriedValue[],
  own: ReadonlyMap<number, JudgedDay>,
  others: ReadonlyMap<number, JudgedDay>,
): NeighbourValues {
  const number = dayNumber(date);
  const there = others.get(number);
  if (!there) return {};
  const carried = lacking
    .filter((value) => isSound(there, value))
    .flatMap((value) => {
      const rule = neighbourTransfer(commonValues(number, value, own, others), FORMS[value]);
      return rule.form === null ? [] : [[value, carriedAmount(value, there.usable[value]!, rule)] as const];
    });
  return Object.fromEntries(carried);
}

/**
 * The values that a day lacks and a neighbour could tell.
 *
 * @param measured - What may be used of the day; null where nobody sent it. [any]
 * @returns Their names; none where both temperatures are there, as the procedure for missing data (FAO-56, chapter 3) needs no more. [code]
 */
export function lackingValues(measured: WeatherDay | null): readonly CarriedValue[] {
  if (measured === null) return NAMES;
  if (measured.tmax !== null && measured.tmin !== null) return [];
  return NAMES.filter((value) => measured[value] === null);
}

function commonValues(
  number: number,
  value: CarriedValue,
  own: ReadonlyMap<number, JudgedDay>,
  others: ReadonlyMap<number, JudgedDay>,
): readonly CommonValue[] {
  const common: CommonValue[] = [];
  for (let day = number - REACH; day <= number + REACH; day++) {
    const [here, there] = [own.get(day), others.get(day)];
    if (here && there && isSound(here, value) && isSound(there, value))
      common.push({ own: here.usable[value]!, neighbour: there.usable[value]! });
  }
  return common;
}

function carriedAmount(value: CarriedValue, found: number, rule: Exclude<NeighbourTransfer, { form: null }>): CarriedAmount {
  const told = rule.form === 'difference' ? found + rule.by : found * rule.by;
  const [lowest, highest] = LIMITS[value] ?? [-Infinity, Infinity];
  const amount = Math.min(highest, Math.max(lowest, told));
  const leastSd = rule.form === 'difference' ? LEAST_SD[value] : LEAST_SD[value] * amount;
  return { amount, sd: Math.max(rule.residualSd, leastSd), commonDays: rule.commonDays };
}
