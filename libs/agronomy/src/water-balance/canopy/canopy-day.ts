import { metres, millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { canopyCover } from './canopy-cover.js';
import type { GrowingPlants } from './growing-plants.js';
import { developedShare, stageCoefficient } from './growth-stages.js';
import { climateTerm, heightFactor, maximumCropCoefficient } from './maximum-crop-coefficient.js';

/** The air over the plants, as far as it raises their highest coefficient. */
export type CanopyAir = {
  /** Mean wind of the day at 2 m, u2. [m/s] */
  readonly windSpeedAt2M: Quantity<'m/s'>;
  /** Lowest relative humidity of the day, RHmin. [%] */
  readonly minimumHumidity: number;
};

/** What plants and air are on one day. */
export type CanopyDay = {
  /** Basal crop coefficient, Kcb. [–] */
  readonly basalCoefficient: number;
  /** Height of the plants, h. [m] */
  readonly plantHeight: Quantity<'m'>;
  /** Highest crop coefficient that the air allows, Kcmax. [–] */
  readonly maximumCoefficient: number;
  /** Share of the ground that plants shade, fc. [–] */
  readonly canopyCover: number;
  /** Depth of the roots, Zr. [mm] */
  readonly rootDepth: Quantity<'mm'>;
};

/**
 * Coefficient, height, cover and roots of plants on a day of their season (FAO-56, chapters 7 and 8).
 *
 * Height and roots follow the development of Kcb and do not shrink in the late season.
 *
 * @param plants - How the plants grow. [–]
 * @param seasonDay - Days since the season began, 0 on its first day. [d]
 * @param air - Wind and humidity of the day. [–]
 * @returns What plants and air are on that day. [–]
 * @throws {DomainError} `GROWTH_STAGES_OUT_OF_DOMAIN`, `WEATHER_OUT_OF_DOMAIN` or `PLANT_HEIGHT_OUT_OF_DOMAIN` when an input cannot be.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 66, 72 and 76.
 */
export function canopyDay(plants: GrowingPlants, seasonDay: number, air: CanopyAir): CanopyDay {
  const { stages, initialHeight, fullHeight, initialRootDepth, fullRootDepth, minimumCoefficient } = plants;
  const basalCoefficient = stageCoefficient(seasonDay, stages, plants.basalCoefficients);
  const grown = developedShare(seasonDay, stages);
  const plantHeight = metres(initialHeight + grown * (fullHeight - initialHeight));
  const climate = climateTerm(air.windSpeedAt2M, air.minimumHumidity);
  const maximumCoefficient = maximumCropCoefficient(climate, heightFactor(plantHeight), basalCoefficient);
  return {
    basalCoefficient,
    plantHeight,
    maximumCoefficient,
    canopyCover: canopyCover({ basalCoefficient, minimumCoefficient, maximumCoefficient }, plantHeight),
    rootDepth: millimetres(initialRootDepth + grown * (fullRootDepth - initialRootDepth)),
  };
}
