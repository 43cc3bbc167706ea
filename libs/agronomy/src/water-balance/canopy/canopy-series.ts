import { DomainError } from '@rillbook/units/domain-error.js';
import { metres } from '@rillbook/units/length.js';
import { canopyCover } from './canopy-cover.js';
import type { GrowingPlants } from './growing-plants.js';
import { developedShare, stageCoefficient } from './growth-stages.js';
import { heightFactor, maximumCropCoefficient } from './maximum-crop-coefficient.js';

/** What plants and air are, one number per day: shared by all zones of a station with the same plants. */
export type CanopySeries = {
  /** Basal crop coefficient, Kcb. [–], one per day */
  readonly basalCoefficient: Float64Array;
  /** Highest crop coefficient, Kcmax. [–], one per day */
  readonly maximumCoefficient: Float64Array;
  /** Share of the ground that plants shade, fc. [–], one per day */
  readonly canopyCover: Float64Array;
  /** Depth of the roots, Zr. [mm], one per day */
  readonly rootDepth: Float64Array;
};

/**
 * The canopy of every day of a season, the powers taken once for all zones that share it.
 *
 * @param plants - How the plants grow. [–]
 * @param climate - What wind and dry air add to a coefficient at 3 m, made by `climateTerm`. [–], one per day
 * @returns Coefficients, cover and roots. One number per day. [–]
 * @throws {DomainError} `WEATHER_SERIES_OUT_OF_DOMAIN` when a day's term is not a number; else as `canopyDay`.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 66, 72 and 76.
 */
export function canopySeries(plants: GrowingPlants, climate: ArrayLike<number>): CanopySeries {
  const days = climate.length;
  const series = {
    basalCoefficient: new Float64Array(days),
    maximumCoefficient: new Float64Array(days),
    canopyCover: new Float64Array(days),
    rootDepth: new Float64Array(days),
  };
  const { stages, minimumCoefficient } = plants;
  const coefficients = { basalCoefficient: 0, minimumCoefficient, maximumCoefficient: 0 };
  let factorOf = Number.NaN;
  let factor = 0;
  for (let day = 0; day < days; day += 1) {
    const term = climate[day] as number;
    if (!Number.isFinite(term)) throw new DomainError('WEATHER_SERIES_OUT_OF_DOMAIN', { name: 'climate', day, value: term });
    const grown = developedShare(day, stages);
    const height = metres(plants.initialHeight + grown * (plants.fullHeight - plants.initialHeight));
    if (height !== factorOf) {
      factorOf = height;
      factor = heightFactor(height);
    }
    coefficients.basalCoefficient = stageCoefficient(day, stages, plants.basalCoefficients);
    coefficients.maximumCoefficient = maximumCropCoefficient(term, factor, coefficients.basalCoefficient);
    series.basalCoefficient[day] = coefficients.basalCoefficient;
    series.maximumCoefficient[day] = coefficients.maximumCoefficient;
    series.canopyCover[day] = canopyCover(coefficients, height);
    series.rootDepth[day] = plants.initialRootDepth + grown * (plants.fullRootDepth - plants.initialRootDepth);
  }
  return series;
}
