import { DomainError } from '@rillbook/units/domain-error.js';
import { errorsOf, meanOf } from './paired-series.js';

/** How well a model fits what was measured. Errors are predicted less observed. */
export interface ModelFit {
  /** Root of the mean squared error. [any] */
  readonly rmse: number;
  /** Over the mean observed; null where that is zero. [–] */
  readonly cvRmse: number | null;
  /** The same with n − p in place of n. [–] */
  readonly adjustedCvRmse: number | null;
  /** Mean error over the mean observed: above zero the model says too much. [–] */
  readonly nmbe: number | null;
  /** The same with n − p in place of n. [–] */
  readonly adjustedNmbe: number | null;
  /** Mean size of the error over the mean observed. [–] */
  readonly nmae: number | null;
  /** Mean of the errors' sizes, each over its own observed value; null where one of those is zero. [–] */
  readonly mape: number | null;
}

/**
 * How well a model fits what was measured.
 *
 * CV(RMSE) = √(Σe² / n) / mean; NMBE = Σe / (n · mean); NMAE = Σ|e| / (n · mean); MAPE = Σ|e/observed| / n; adjusted with n − p
 *
 * @param observed - What was measured. [any]
 * @param predicted - What the model says, in the same order and unit. [any]
 * @param parameters - Number p of the model's parameters. [–]
 * @returns The measures of fit. [–]
 * @throws {DomainError} `SERIES_OUT_OF_DOMAIN` when the series cannot be compared; `PARAMETERS_OUT_OF_DOMAIN` when p is not a whole number
 * from 0 to below the number of pairs.
 * @source ASHRAE Guideline 14 as restated in public code; an open library of energy metering.
 * @example modelFit([6, 1, 1, 6], [3.5, 3.5, 3.5, 3.5], 1) // rmse 2.5, cvRmse 0.714, nmbe 0, mape 1.458
 */
export function modelFit(observed: readonly number[], predicted: readonly number[], parameters: number): ModelFit {
  const errors = errorsOf(observed, predicted);
  const count = errors.length;
  if (!(Number.isInteger(parameters) && parameters >= 0 && parameters < count)) {
    throw new DomainError('PARAMETERS_OUT_OF_DOMAIN', { parameters, count });
  }
  const freedom = count - parameters;
  const squares = errors.reduce((sum, error) => sum + error * error, 0);
  const bias = errors.reduce((sum, error) => sum + error, 0);
  const mean = meanOf(observed);
  const overMean = (value: number) => (mean === 0 ? null : value / mean);
  return {
    rmse: Math.sqrt(squares / count),
    cvRmse: overMean(Math.sqrt(squares / count)),
    adjustedCvRmse: overMean(Math.sqrt(squares / freedom)),
    nmbe: overMean(bias / count),
    adjustedNmbe: overMean(bias / freedom),
    nmae: overMean(meanOf(errors.map(Math.abs))),
    mape: observed.includes(0) ? null : meanOf(errors.map((error, at) => Math.abs(error / (observed[at] ?? Number.NaN)))),
  };
}
