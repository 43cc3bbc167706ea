import type { ModelFit } from './model-fit.js';

/** Interval of the data to which a model was fitted. */
export type FitInterval = 'monthly' | 'hourly';

/** Largest misfit that is accepted. */
export interface FitLimits {
  readonly cvRmse: number;
  readonly nmbe: number;
}

/** Limits by interval. Water data scatter more than energy data: a target here, not a gate. */
export const fitLimits: Readonly<Record<FitInterval, FitLimits>> = {
  monthly: { cvRmse: 0.15, nmbe: 0.05 },
  hourly: { cvRmse: 0.3, nmbe: 0.1 },
};

/**
 * Whether a model fits within the published limits.
 *
 * |NMBE| and CV(RMSE), both adjusted for parameters, at most the limit of the interval
 *
 * @param fit - Measures of fit. [–]
 * @param interval - Interval of the data. [code]
 * @returns Whether both are within; null where the fit has no measure because the mean is zero. [–]
 * @source ASHRAE Guideline 14, from a secondary source: monthly 15 % and 5 %, hourly 30 % and 10 %.
 */
export function fitsWithinLimits(fit: Pick<ModelFit, 'adjustedCvRmse' | 'adjustedNmbe'>, interval: FitInterval): boolean | null {
  const { adjustedCvRmse, adjustedNmbe } = fit;
  if (adjustedCvRmse === null || adjustedNmbe === null) return null;
  return adjustedCvRmse <= fitLimits[interval].cvRmse && Math.abs(adjustedNmbe) <= fitLimits[interval].nmbe;
}
