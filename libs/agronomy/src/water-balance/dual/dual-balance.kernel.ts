import type { CanopySeries } from '../canopy/canopy-series.js';
import { WETTING_RAIN } from '../surface/wetted-fraction.js';
import type { KernelDays, KernelWater, KernelZone } from './dual-series.js';

/**
 * Inner loop of the dual crop coefficient balance: the same arithmetic as a chain of `dualDay`, on arrays and without an object or a power.
 *
 * A value that is not a number spoils all days after it, and so shows in the result.
 *
 * @param water - Reference evapotranspiration, rain, irrigation and the share that it wets. [mm/d], one per day
 * @param canopy - Coefficients, cover and roots, shared by zones with the same plants. [–], one per day
 * @param zone - Soil, surface, roots and start, as plain numbers. [mm]
 * @param days - Written to. [mm/d], one per day, same order
 * @returns Water missing in the root zone after the last day. [mm]
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 69 to 88.
 */
export function runDualBalance(water: KernelWater, canopy: CanopySeries, zone: KernelZone, days: KernelDays): number {
  const { eto, rain, irrigation, irrigatedFraction } = water;
  const { basalCoefficient, maximumCoefficient, canopyCover, rootDepth } = canopy;
  const { totalEvaporableWater: tew, readilyEvaporableWater: rew, tableFraction, mulchFactor, retention, capillaryRise } = zone;
  const { evaporation, transpiration, runoff, surfaceDepletion, depletion, deepPercolation, shortfall } = days;
  const availableWater = zone.availableWater / 1000;
  const abstraction = 0.2 * retention;
  const slowing = tew - rew;
  let surface = zone.surfaceDepletion;
  let root = zone.depletion;
  let wetted = zone.wettedFraction;
  for (let day = 0; day < eto.length; day += 1) {
    const reference = eto[day] as number;
    const fallen = rain[day] as number;
    const applied = irrigation[day] as number;
    const basal = basalCoefficient[day] as number;
    const maximum = maximumCoefficient[day] as number;
    if (applied > 0) wetted = irrigatedFraction[day] as number;
    else if (fallen >= WETTING_RAIN) wetted = 1;
    const bare = 1 - (canopyCover[day] as number);
    let exposed = bare < wetted ? bare : wetted;
    if (exposed < 0.01) exposed = 0.01;

    const reduction = surface <= rew ? 1 : surface >= tew ? 0 : (tew - surface) / slowing;
    const drying = reduction * (maximum - basal);
    const energy = exposed * maximum;
    const evaporationCoefficient = mulchFactor * (drying < energy ? drying : energy);
    const evaporated = evaporationCoefficient * reference;
    const excess = fallen - abstraction;
    const ranOff = excess > 0 ? excess * (excess / (fallen + 0.8 * retention)) : 0;
    const infiltrated = fallen - ranOff;
    const wetting = infiltrated + (applied > 0 ? applied / wetted : 0);
    const drained = wetting > surface ? wetting - surface : 0;
    surface = surface - wetting + evaporated / exposed + drained;
    surface = surface > tew ? tew : surface < 0 ? 0 : surface;

    const total = availableWater * (rootDepth[day] as number);
    const unadjusted = tableFraction + 0.04 * (5 - (evaporationCoefficient + basal) * reference);
    const readily = (unadjusted > 0.8 ? 0.8 : unadjusted < 0.1 ? 0.1 : unadjusted) * total;
    const stress = root <= readily ? 1 : root >= total ? 0 : (total - root) / (total - readily);
    const transpired = stress * basal * reference;
    const used = evaporated + transpired;
    const received = infiltrated + applied + capillaryRise;
    const below = received - used - root;
    const deep = below > 0 ? below : 0;
    const end = root - received + used + deep;
    const positive = end < 0 ? 0 : end;
    const missing = positive > total ? positive - total : 0;
    root = positive > total ? total : positive;

    evaporation[day] = evaporated;
    transpiration[day] = transpired;
    runoff[day] = ranOff;
    surfaceDepletion[day] = surface;
    depletion[day] = root;
    deepPercolation[day] = deep;
    shortfall[day] = missing;
  }
  return root;
}
