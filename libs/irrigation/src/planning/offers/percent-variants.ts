import type { Program } from '../../settings/settings-fact.js';
import type { PlanInput } from '../plan-input.js';

const AS_SET = 100;

/** A percent of a program, in force with the month's own, and the presses that it takes. [%] */
export interface PercentOption {
  readonly percent: number;
  readonly inForce: number;
  readonly presses: number;
}

/** Percents that programs may be given together; on a timer with one percent for all, the presses of changing it are counted once. */
export interface PercentVariant {
  readonly percentsOf: (present: Program | undefined) => readonly PercentOption[];
  readonly presses: number;
}

/**
 * Percents that a full program is looked for with: as set now, and 100 % (less where the month's own percent is above it, so that every run
 * that the timer can count is reached).
 *
 * @param input - The controller and the month. [%]
 * @returns One variant where each program has its own percent, else one for each percent. [%]
 */
export function percentVariants(input: PlanInput): readonly PercentVariant[] {
  const ofMonth = input.traits.monthlyAdjustPercent?.[Number(input.month.slice(5)) - 1] ?? AS_SET;
  const base = basePercent(input, ofMonth);
  const usable = (percent: number) =>
    percent > 0 &&
    percent * ofMonth > 0 &&
    percent * ofMonth <= AS_SET * AS_SET &&
    percent <= (input.traits.maxAdjustPercent ?? Number.POSITIVE_INFINITY);
  const option = (percent: number, presses: number): PercentOption => ({ percent, inForce: (percent * ofMonth) / AS_SET, presses });
  if (input.traits.adjustScope === 'program') {
    const percentsOf = (present: Program | undefined) => {
      const now = present?.adjustPercent ?? AS_SET;
      return [...new Set([base, now])].filter(usable).map((percent) => option(percent, Number(percent !== now)));
    };
    return [{ percentsOf, presses: 0 }];
  }
  const [now = AS_SET, ...others] = new Set((input.present ?? []).map(({ adjustPercent }) => adjustPercent));
  return [...new Set([base, ...(others.length ? [] : [now])])]
    .filter(usable)
    .map((percent) => ({ percentsOf: () => [option(percent, 0)], presses: Number(percent !== now) }));
}

// 100 %, or the largest that the timer has below it.
function basePercent({ traits }: PlanInput, ofMonth: number): number {
  const step = traits.adjustStepPercent ?? 1;
  const most = traits.maxAdjustPercent ?? AS_SET;
  const largest = most < AS_SET ? Math.floor(most / step + 1e-9) * step : AS_SET;
  return Math.min(largest, ofMonth > AS_SET ? Math.floor((AS_SET * AS_SET) / ofMonth / step) * step : AS_SET);
}
