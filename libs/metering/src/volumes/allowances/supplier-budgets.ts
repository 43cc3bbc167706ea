import { squareFeetFromSquareMetres } from '@rillbook/units/area.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { litresFromDepth, litresFromGallons } from '@rillbook/units/volume.js';

/** Water need of a zone in a budget by area, with the gallons a year that each square foot of it is given. */
const GALLONS_PER_SQUARE_FOOT = { high: 18, moderate: 14, low: 8 } as const;

/** Gallons a year that the average square foot of a plan may be given. */
const LARGEST_AVERAGE = 15;

/** A zone of a budget by area. */
export interface AreaBudgetZone {
  readonly waterNeed: keyof typeof GALLONS_PER_SQUARE_FOOT;
  readonly areaM2: Quantity<'m2'>;
}

/** A year's budget by area; the average and its judgement are null where there is no area. */
export interface AreaBudget {
  readonly litres: Quantity<'L'>;
  /** Mean depth of water over all zones. [mm] */
  readonly averageDepth: Quantity<'mm'> | null;
  /** Whether the average keeps the limit. */
  readonly within: boolean | null;
}

/**
 * Allocation of a water district for a landscape by the evapotranspiration that came.
 *
 * V = ETo · factor · A; in US units ETo [in] · 36.30 CCF per acre-inch · factor
 *
 * @param referenceEvapotranspiration - Evapotranspiration of the period. [mm]
 * @param factor - Share of it that the district allocates; 0.75 by its printed weeks. [–]
 * @param area - Area of the landscape. [m2]
 * @returns Allocated volume. [L]
 * @throws {DomainError} `BUDGET_OUT_OF_DOMAIN` when a value is below 0.
 * @source Irvine Ranch Water District, weekly evapotranspiration reports; the factor is inferred from their numbers.
 * @example districtAllocation(0.67 in, 0.75, 1 acre) // 18.24 CCF
 */
export function districtAllocation(referenceEvapotranspiration: Quantity<'mm'>, factor: number, area: Quantity<'m2'>): Quantity<'L'> {
  if (!(referenceEvapotranspiration >= 0 && factor >= 0 && area >= 0)) {
    throw new DomainError('BUDGET_OUT_OF_DOMAIN', { referenceEvapotranspiration, factor, area });
  }
  return litresFromDepth((factor * referenceEvapotranspiration) as Quantity<'mm'>, area);
}

/**
 * A year's budget by area and water need, without weather.
 *
 * V = Σ rate · A with 18, 14 and 8 gal/ft² for high, moderate and low; the average may not exceed 15 gal/ft²
 *
 * @param zones - Zones of the plan. [m2]
 * @returns Volume of a year, its mean depth and whether that keeps the limit. [L] and [mm]
 * @throws {DomainError} `BUDGET_OUT_OF_DOMAIN` when an area is below 0 or a water need is not of the table.
 * @source City of Fort Collins, Colorado, landscape water budget.
 */
export function areaBudget(zones: readonly AreaBudgetZone[]): AreaBudget {
  const gallonsOf = ({ waterNeed, areaM2 }: AreaBudgetZone): number => {
    const rate = GALLONS_PER_SQUARE_FOOT[waterNeed];
    if (rate === undefined || !(areaM2 >= 0)) throw new DomainError('BUDGET_OUT_OF_DOMAIN', { waterNeed, areaM2 });
    return rate * squareFeetFromSquareMetres(areaM2);
  };
  const gallons = zones.reduce((sum, zone) => sum + gallonsOf(zone), 0);
  const areaM2 = zones.reduce((sum, zone) => sum + zone.areaM2, 0) as Quantity<'m2'>;
  const litres = litresFromGallons(gallons);
  if (!(areaM2 > 0)) return { litres, averageDepth: null, within: null };
  return {
    litres,
    averageDepth: (litres / areaM2) as Quantity<'mm'>,
    within: gallons <= LARGEST_AVERAGE * squareFeetFromSquareMetres(areaM2),
  };
}
