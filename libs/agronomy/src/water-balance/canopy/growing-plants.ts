import { DomainError } from '@rillbook/units/domain-error.js';
import { metres, millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { adjustedBasalCoefficient } from './adjusted-basal-coefficient.js';
import type { GrowthStages, StageCoefficients } from './growth-stages.js';
import { heightFactor } from './maximum-crop-coefficient.js';

/** Coefficient of dry bare soil with hardly any cover, Kcmin (FAO-56, below Eq. 76: 0.15 to 0.20). [–] */
const BARE_SOIL_COEFFICIENT = 0.15;

/** Plants over a season: how their coefficient, height and roots change. */
export type GrowingPlants = {
  /** Lengths of the growth stages. [d] */
  readonly stages: GrowthStages;
  /** Basal crop coefficients, Kcb. [–] */
  readonly basalCoefficients: StageCoefficients;
  /** Coefficient of dry bare soil, Kcmin. [–] */
  readonly minimumCoefficient: number;
  /** Height at the start. [m] */
  readonly initialHeight: Quantity<'m'>;
  /** Height from mid-season on. [m] */
  readonly fullHeight: Quantity<'m'>;
  /** Depth of the roots at the start. [mm] */
  readonly initialRootDepth: Quantity<'mm'>;
  /** Depth of the roots from mid-season on; not less. [mm] */
  readonly fullRootDepth: Quantity<'mm'>;
};

/**
 * Plants that stand all year with one coefficient: lawns, shrubs and trees that have grown.
 *
 * @param basalCoefficient - Basal coefficient, Kcb: transpiration without the soil's evaporation. [–]
 * @param plantHeight - Their height. [m]
 * @param rootDepth - Depth of their roots. [mm]
 * @returns Plants whose stages are all alike. [–]
 * @throws {DomainError} `CROP_COEFFICIENT_OUT_OF_DOMAIN` when the coefficient is below 0 or not finite; `LENGTH_OUT_OF_DOMAIN` when a length is
 * not finite.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, chapter 7; Kcmin below Eq. 76.
 */
export function establishedPlants(basalCoefficient: number, plantHeight: Quantity<'m'>, rootDepth: Quantity<'mm'>): GrowingPlants {
  if (!(basalCoefficient >= 0 && basalCoefficient < Infinity))
    throw new DomainError('CROP_COEFFICIENT_OUT_OF_DOMAIN', { basalCoefficient });
  return {
    stages: { initialDays: 0, developmentDays: 0, midDays: 0, lateDays: 0 },
    basalCoefficients: { initial: basalCoefficient, mid: basalCoefficient, end: basalCoefficient },
    minimumCoefficient: Math.min(BARE_SOIL_COEFFICIENT, basalCoefficient),
    initialHeight: metres(plantHeight),
    fullHeight: metres(plantHeight),
    initialRootDepth: millimetres(rootDepth),
    fullRootDepth: millimetres(rootDepth),
  };
}

/**
 * Plants whose coefficients of the table are brought to a climate: those of mid-season and the end (FAO-56, Eq. 70).
 *
 * @param plants - Plants with the coefficients of the table. [–]
 * @param climateTerm - What the mean wind and lowest humidity of mid and late season add at 3 m. [–]
 * @returns The same plants with adjusted coefficients. [–]
 * @throws {DomainError} `PLANT_HEIGHT_OUT_OF_DOMAIN` when the full height is negative; `CROP_COEFFICIENT_OUT_OF_DOMAIN` as
 * `adjustedBasalCoefficient`.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 70.
 */
export function plantsInClimate(plants: GrowingPlants, climateTerm: number): GrowingPlants {
  const factor = heightFactor(plants.fullHeight);
  const { initial, mid, end } = plants.basalCoefficients;
  const adjusted = (tableCoefficient: number) => adjustedBasalCoefficient(tableCoefficient, climateTerm, factor);
  return { ...plants, basalCoefficients: { initial, mid: adjusted(mid), end: adjusted(end) } };
}
