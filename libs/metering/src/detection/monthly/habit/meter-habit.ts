import { valueAt } from '../../hourly/steps/value-at.js';
import type { ZoneMix } from '../programmed/zone-mix.js';

/** A zone of a habit: how far its own flow on record may be off, beside what all flows of the meter are off by together. */
export interface HabitZone {
  readonly zoneId: string;
  readonly flowRelativeSd: number;
}

/**
 * What is known of a meter's habit: metered = Σ ratio of the zone · programmed of the zone + offset · days. `state` are the ratios in the order of
 * the zones and last the offset [L/d], `covariance` is theirs by rows, and `noise` is how months scatter about it, as a relative variance of
 * programmed water learnt from as many readings as `freedom` says. `mix` is that of the newest interval of which one is known.
 */
export interface MeterHabit {
  readonly zones: readonly HabitZone[];
  readonly state: Float64Array;
  readonly covariance: Float64Array;
  readonly noise: number;
  readonly freedom: number;
  readonly taught: number;
  readonly mix: ZoneMix;
}

/**
 * Before months are seen they are taken to scatter by 2.4 %, which five readings outweigh: a meter is good to 1.5 % and recorded flows follow
 * pressure. An assumption on the safe side; it is learnt.
 */
const PRIOR_NOISE_SD = 0.024;
const PRIOR_FREEDOM = 5;

/**
 * However flows on record were found, all of a meter's may be off together by this much: a wrong unit, another nozzle, a test at another
 * pressure. Before readings have told the ratio, no more than that is a leak. An assumption on the safe side.
 */
const LEAST_RATIO_SD = 0.15;

/**
 * The habit of a meter before anything is read: the flows on record, within their uncertainty.
 *
 * @param zones - The meter's zones; without any the meter is one. [–]
 * @param ratioSd - How far the flows on record may be off altogether. [–]
 * @param offset - Water beside programs of a day, and how far that may be off. [L/d]
 * @returns The habit. [code]
 */
export function habitOnRecord(zones: readonly HabitZone[], ratioSd: number, offset = { litresPerDay: 0, sd: 0 }): MeterHabit {
  const own = zones.length ? zones : [{ zoneId: '', flowRelativeSd: 0 }];
  const n = own.length + 1;
  const covariance = new Float64Array(n * n);
  own.forEach(({ flowRelativeSd }, at) => (covariance[at * n + at] = flowRelativeSd ** 2));
  covariance[n * n - 1] = offset.sd ** 2;
  const state = new Float64Array(n).fill(1);
  state[n - 1] = offset.litresPerDay;
  const habit = { zones: own, state, covariance, noise: PRIOR_NOISE_SD ** 2, freedom: PRIOR_FREEDOM, taught: 0, mix: null };
  return loosened(habit, Math.max(ratioSd, LEAST_RATIO_SD));
}

/**
 * A habit whose ratios may all have moved together.
 *
 * @param habit - The habit. [code]
 * @param relativeSd - By how much, of each ratio. [–]
 * @returns The habit, as much less sure. [code]
 */
export function loosened(habit: MeterHabit, relativeSd: number): MeterHabit {
  const { state, covariance } = habit;
  const n = state.length;
  const wider = covariance.slice();
  for (let row = 0; row < n - 1; row++)
    for (let column = 0; column < n - 1; column++)
      wider[row * n + column] = valueAt(wider, row * n + column) + relativeSd ** 2 * valueAt(state, row) * valueAt(state, column);
  return { ...habit, covariance: wider };
}

/** Water that was added, told both ways: as a share of what runs [–], or of a day [L/d]. */
export interface AddedWater {
  readonly share: number;
  readonly litresPerDay: number;
}

/**
 * A habit to which a cause was added, of which it is not known whether it passes all the time or while something runs.
 *
 * @param habit - The habit before. [code]
 * @param added - What was added: either is in doubt by as much. [L/d]
 * @returns The habit, which the next intervals teach how much of either it is. [code]
 */
export function raised(habit: MeterHabit, added: AddedWater): MeterHabit {
  const wider = loosened(habit, added.share);
  const covariance = wider.covariance.slice();
  const last = covariance.length - 1;
  covariance[last] = valueAt(covariance, last) + added.litresPerDay ** 2;
  return { ...wider, covariance };
}

/**
 * A habit whose flows on record are a level that is not known: every ratio times it.
 *
 * @param habit - The habit. [code]
 * @param level - The factor. [–]
 * @returns The habit at that level. [code]
 */
export function atLevel(habit: MeterHabit, level: number): MeterHabit {
  const last = habit.state.length - 1;
  const factor = (at: number) => (at === last ? 1 : level);
  return {
    ...habit,
    state: habit.state.map((value, at) => value * factor(at)),
    covariance: habit.covariance.map((value, at) => value * factor(Math.floor(at / (last + 1))) * factor(at % (last + 1))),
  };
}
