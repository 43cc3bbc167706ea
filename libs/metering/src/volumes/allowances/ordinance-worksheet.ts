import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { estimatedTotalWaterUse } from '../ordinance-allowance.js';

/** One row of the worksheet: an area with one plant factor and one way of watering. */
export interface WorksheetHydrozone {
  /** Plant factor PF; 1 for special landscape area. [–] */
  readonly plantFactor: number;
  /** Irrigation efficiency IE; 1 for special landscape area. [–] */
  readonly irrigationEfficiency: number;
  readonly areaM2: Quantity<'m2'>;
  /** Whether it is a special landscape area: edible, recreational, or watered with recycled water. */
  readonly special: boolean;
}

/** What the worksheet adds up to. Averages are null where there is no area to average over. */
export interface OrdinanceWorksheet {
  /** ETWU of each row. [L] */
  readonly litresByHydrozone: readonly Quantity<'L'>[];
  /** Estimated total water use, ETWU. [L] */
  readonly litres: Quantity<'L'>;
  readonly regularAreaM2: Quantity<'m2'>;
  readonly specialAreaM2: Quantity<'m2'>;
  /** Average ETAF of the regular areas: the one that the ordinance limits. [–] */
  readonly averageEtaf: number | null;
  /** Average ETAF of all areas, special ones included. [–] */
  readonly sitewideEtaf: number | null;
}

/** Irrigation efficiency of the ordinance: overhead spray devices, drip system devices. */
const EFFICIENCY = { overhead: 0.75, drip: 0.81 } as const;

/**
 * Irrigation efficiency IE that the ordinance gives a way of watering.
 *
 * @param watering - Overhead spray devices or drip system devices. [code]
 * @returns Share of the water that reaches the plants. [–]
 * @source 23 CCR 492.13, Appendix B, as printed in the municipal codes of Gridley and Ventura, California.
 */
export function ordinanceEfficiency(watering: keyof typeof EFFICIENCY): number {
  return EFFICIENCY[watering];
}

/**
 * Adjustment factor of a hydrozone, ETAF.
 *
 * ETAF = PF / IE
 *
 * @param plantFactor - Plant factor PF. [–]
 * @param irrigationEfficiency - Irrigation efficiency IE. [–]
 * @returns ETAF of the hydrozone. [–]
 * @throws {DomainError} `ORDINANCE_OUT_OF_DOMAIN` when the factor is below 0 or not finite, or the efficiency not above 0 and up to 1.
 * @source California Model Water Efficient Landscape Ordinance, Appendix B.
 * @example hydrozoneAdjustmentFactor(0.5, 0.81) // 0.617
 */
export function hydrozoneAdjustmentFactor(plantFactor: number, irrigationEfficiency: number): number {
  if (!(plantFactor >= 0 && plantFactor < Infinity && irrigationEfficiency > 0 && irrigationEfficiency <= 1)) {
    throw new DomainError('ORDINANCE_OUT_OF_DOMAIN', { plantFactor, irrigationEfficiency });
  }
  return plantFactor / irrigationEfficiency;
}

/**
 * The ordinance's worksheet: estimated water use by hydrozone and the averages that it limits.
 *
 * ETWU = Σ ETo · 0.62 · (PF / IE) · A; average ETAF = Σ (PF / IE) · A / Σ A over the regular areas
 *
 * @param referenceEvapotranspiration - Yearly reference evapotranspiration. [mm]
 * @param hydrozones - Rows of the worksheet. [m2] and [–]
 * @returns Water use of each row and together, areas and averages. [L], [m2] and [–]
 * @throws {DomainError} `ORDINANCE_OUT_OF_DOMAIN` as for one hydrozone.
 * @source California Model Water Efficient Landscape Ordinance, Appendix B.
 */
export function ordinanceWorksheet(
  referenceEvapotranspiration: Quantity<'mm'>,
  hydrozones: readonly WorksheetHydrozone[],
): OrdinanceWorksheet {
  const litresByHydrozone = hydrozones.map(({ plantFactor, irrigationEfficiency, areaM2 }) =>
    estimatedTotalWaterUse(referenceEvapotranspiration, plantFactor, irrigationEfficiency, areaM2),
  );
  const regular = averageOf(hydrozones.filter(({ special }) => !special));
  const all = averageOf(hydrozones);
  return {
    litresByHydrozone,
    litres: litresByHydrozone.reduce<number>((sum, each) => sum + each, 0) as Quantity<'L'>,
    regularAreaM2: regular.areaM2,
    specialAreaM2: (all.areaM2 - regular.areaM2) as Quantity<'m2'>,
    averageEtaf: regular.etaf,
    sitewideEtaf: all.etaf,
  };
}

/**
 * Whether the regular areas of a worksheet keep the ordinance's factor.
 *
 * @param worksheet - The worksheet. [–]
 * @param etaf - Highest average factor that is allowed. [–]
 * @returns True where they do; null where there is no regular area to judge. [–]
 * @source 23 CCR 492.4: the average of the regular areas may not exceed 0.55 for residential and 0.45 for other landscapes.
 */
export function keepsAverageFactor(worksheet: OrdinanceWorksheet, etaf: number): boolean | null {
  return worksheet.averageEtaf === null ? null : worksheet.averageEtaf <= etaf;
}

function averageOf(hydrozones: readonly WorksheetHydrozone[]): { readonly etaf: number | null; readonly areaM2: Quantity<'m2'> } {
  const area = hydrozones.reduce((sum, { areaM2 }) => sum + areaM2, 0);
  const adjusted = hydrozones.reduce(
    (sum, { plantFactor, irrigationEfficiency, areaM2 }) => sum + hydrozoneAdjustmentFactor(plantFactor, irrigationEfficiency) * areaM2,
    0,
  );
  return { etaf: area > 0 ? adjusted / area : null, areaM2: area as Quantity<'m2'> };
}
