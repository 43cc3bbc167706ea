import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { litresFromDepth } from '@rillbook/units/volume.js';
import { grossVolume } from '../gross-volume.js';

/** Share of the peak month's reference evapotranspiration that the approach allows a landscape. */
const ALLOWED_SHARE = 0.7;

/** Share of the peak month's rain that may be counted, at most. */
const LARGEST_RAIN_SHARE = 0.25;

/** Plants of the approach, each with a coefficient by water need. */
export type BudgetPlants = 'trees' | 'shrubs and groundcover' | 'turf' | 'water feature';

/** Landscape coefficients of low, medium and high water need, from memory; a water feature has one. */
const COEFFICIENTS: Readonly<Record<BudgetPlants, Readonly<Record<'low' | 'medium' | 'high', number>>>> = {
  trees: { low: 0.2, medium: 0.5, high: 0.9 },
  'shrubs and groundcover': { low: 0.2, medium: 0.5, high: 0.7 },
  turf: { low: 0.6, medium: 0.7, high: 0.8 },
  'water feature': { low: 0.8, medium: 0.8, high: 0.8 },
};

/** A hydrozone of the approach in its peak month. */
export interface BudgetHydrozone {
  readonly landscapeCoefficient: number;
  readonly areaM2: number;
  readonly duLq: number;
}

/**
 * Landscape coefficient KL of the federal water budget approach.
 *
 * @param plants - What grows there, or a water feature. [code]
 * @param waterNeed - Water need of the plants. [code]
 * @returns Share of reference evapotranspiration. [–]
 * @throws {DomainError} `BUDGET_PLANTS_UNKNOWN` when a word is none of the table.
 * @source EPA WaterSense water budget approach; from memory.
 */
export function budgetCoefficient(plants: BudgetPlants, waterNeed: 'low' | 'medium' | 'high'): number {
  const found = COEFFICIENTS[plants]?.[waterNeed];
  if (found === undefined) throw new DomainError('BUDGET_PLANTS_UNKNOWN', { plants, waterNeed });
  return found;
}

/**
 * Landscape water allowance of the peak month, LWA.
 *
 * LWA = 0.70 · ETo · A; in US units ETo [in] · A [ft²] · 0.6233 gal
 *
 * @param peakEto - Reference evapotranspiration of the month that has most. [mm]
 * @param area - Area of the landscape. [m2]
 * @returns Allowed volume of that month. [L]
 * @throws {DomainError} `BUDGET_OUT_OF_DOMAIN` when a value is below 0.
 * @source EPA WaterSense water budget approach; the 70 % read, the formula from memory.
 * @example landscapeWaterAllowance(6.0 in, 5,000 ft²) // 13,089 gal
 */
export function landscapeWaterAllowance(peakEto: Quantity<'mm'>, area: Quantity<'m2'>): Quantity<'L'> {
  if (!(peakEto >= 0 && area >= 0)) throw new DomainError('BUDGET_OUT_OF_DOMAIN', { peakEto, area });
  return litresFromDepth((ALLOWED_SHARE * peakEto) as Quantity<'mm'>, area);
}

/**
 * Rain of the peak month that the approach lets count, Ra, at most.
 *
 * @param peakMonthRain - Rain of the month that has most evapotranspiration. [mm]
 * @returns A quarter of it. [mm]
 * @throws {DomainError} `RAIN_OUT_OF_DOMAIN` when below 0 or not finite.
 * @source EPA WaterSense water budget approach; from memory.
 */
export function countedRainAtMost(peakMonthRain: Quantity<'mm'>): Quantity<'mm'> {
  if (!(peakMonthRain >= 0 && peakMonthRain < Infinity)) throw new DomainError('RAIN_OUT_OF_DOMAIN', { rain: peakMonthRain });
  return (LARGEST_RAIN_SHARE * peakMonthRain) as Quantity<'mm'>;
}

/**
 * Landscape water requirement of a hydrozone in the peak month, LWR: nothing where rain is enough.
 *
 * LWR = RTM · max(0, ETo · KL − Ra) · A with RTM = 1 / (0.4 + 0.6 · DU_LQ)
 *
 * @param peakEto - Reference evapotranspiration of the month that has most. [mm]
 * @param countedRain - Rain that counts, Ra. [mm]
 * @param hydrozone - Coefficient, area and uniformity. [m2] and [–]
 * @returns Required volume of that month. [L]
 * @throws {DomainError} `BUDGET_OUT_OF_DOMAIN` when a value is below 0; `UNIFORMITY_OUT_OF_DOMAIN` for the uniformity.
 * @source EPA WaterSense water budget approach; from memory.
 * @example landscapeWaterRequirement(6.0 in, 0.3 in, { KL 0.7, 1,000 ft², DU 0.65 }) // 3,077 gal
 */
export function landscapeWaterRequirement(peakEto: Quantity<'mm'>, countedRain: Quantity<'mm'>, hydrozone: BudgetHydrozone): Quantity<'L'> {
  const { landscapeCoefficient, areaM2, duLq } = hydrozone;
  if (!(peakEto >= 0 && countedRain >= 0 && landscapeCoefficient >= 0 && areaM2 >= 0)) {
    throw new DomainError('BUDGET_OUT_OF_DOMAIN', { peakEto, countedRain, landscapeCoefficient, areaM2 });
  }
  const net = Math.max(0, peakEto * landscapeCoefficient - countedRain) as Quantity<'mm'>;
  return grossVolume(net, { areaM2, duLq, leachingFraction: 0 });
}
