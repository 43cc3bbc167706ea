/** One value on one day, as both stations measured it. */
export type CommonValue = { readonly own: number; readonly neighbour: number };

/** How a neighbour's value is carried over: by what it is more, or by how many times. */
export type TransferForm = 'difference' | 'ratio';

/** A rule that carries a neighbour's value over to the station; or why there is none. */
export type NeighbourTransfer =
  | {
      readonly form: TransferForm;
      /** What is added, or what is multiplied by. */
      readonly by: number;
      /** Standard deviation of what the rule leaves on the common days, in the value's unit. */
      readonly residualSd: number;
      readonly commonDays: number;
    }
  | { readonly form: null; readonly reason: 'too-few-common-days' | 'too-different'; readonly commonDays: number };

/** Days that both stations must have measured. An assumption; FAO-56, Annex 4, asks for a record long enough without a number, from memory. */
const LEAST_COMMON_DAYS = 20;

/**
 * How a neighbour's value becomes the station's, learnt on the days that both measured.
 *
 * difference: own = neighbour + (mean(own) - mean(neighbour)); ratio: own = neighbour · Σ own / Σ neighbour
 *
 * The rule stands only where it leaves less than the station's own spread about its mean: else the neighbour tells nothing.
 *
 * @param common - The days that both measured. [any], one per day
 * @param form - Difference for temperatures and humidities, ratio for wind and radiation. [code]
 * @returns The rule with its residual; or the reason why there is none. [any]
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Annex 4 (completing a record from a neighbouring station), from memory; here
 * with one coefficient for two, and the residual in place of a limit on r².
 */
export function neighbourTransfer(common: readonly CommonValue[], form: TransferForm): NeighbourTransfer {
  const commonDays = common.length;
  if (commonDays < LEAST_COMMON_DAYS) return { form: null, reason: 'too-few-common-days', commonDays };
  const sum = (of: (value: CommonValue) => number) => common.reduce((total, value) => total + of(value), 0);
  const [own, neighbour] = [sum((value) => value.own), sum((value) => value.neighbour)];
  if (form === 'ratio' && !(neighbour > 0 && own > 0)) return { form: null, reason: 'too-different', commonDays };
  const by = form === 'difference' ? (own - neighbour) / commonDays : own / neighbour;
  const spreadOf = (expected: (value: CommonValue) => number) =>
    Math.sqrt(sum((value) => (value.own - expected(value)) ** 2) / (commonDays - 1));
  const residualSd = spreadOf((value) => transferred(value.neighbour, form, by));
  if (residualSd >= spreadOf(() => own / commonDays)) return { form: null, reason: 'too-different', commonDays };
  return { form, by, residualSd, commonDays };
}

function transferred(value: number, form: TransferForm, by: number): number {
  return form === 'difference' ? value + by : value * by;
}
