import { yearlyNormal } from '@rillbook/agronomy/budgets/normal-year.js';
import { squareFeetFromSquareMetres, squareMetresFromSquareFeet } from '@rillbook/units/area.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import { inchesFromMillimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { litresFromGallons } from '@rillbook/units/volume.js';

/** Gallons of an inch of water on a square foot as the ordinance rounds it; part of its law, not of physics. */
const GALLONS_PER_INCH_SQUARE_FOOT = 0.62;

/** Highest adjustment factor that an ordinance can give: special landscape areas have 1. [–] */
export const HIGHEST_ETAF = 1;

/** An area that an ordinance limits. The special landscape area is part of the irrigated area. */
export interface OrdinanceArea {
  readonly etaf: number;
  readonly irrigatedAreaM2: Quantity<'m2'>;
  readonly specialLandscapeAreaM2: Quantity<'m2'>;
}

/**
 * Water that the ordinance allows for a depth of reference evapotranspiration (MAWA).
 *
 * MAWA = ETo · 0.62 · (ETAF · LA + (1 − ETAF) · SLA), ETo in inches, areas in square feet, gallons
 *
 * @param referenceEvapotranspiration - Reference evapotranspiration of the month, the days to date or the year. [mm]
 * @param area - Adjustment factor, irrigated area LA and special landscape area SLA. [m2]
 * @returns Allowed volume for those days. [L]
 * @throws {DomainError} `ORDINANCE_OUT_OF_DOMAIN` when a value is below zero, the factor above 1 or the special area above the irrigated.
 * @source California Model Water Efficient Landscape Ordinance, 23 CCR 492.4, Appendix B.
 * @example ordinanceAllowance(ETo 51.1 in, ETAF 0.7, LA 50,000 ft², SLA 0) // 1,108,870 gal
 */
export function ordinanceAllowance(referenceEvapotranspiration: Quantity<'mm'>, area: OrdinanceArea): Quantity<'L'> {
  const { etaf, irrigatedAreaM2, specialLandscapeAreaM2 } = area;
  const good = referenceEvapotranspiration >= 0 && etaf >= 0 && etaf <= HIGHEST_ETAF && specialLandscapeAreaM2 >= 0;
  if (!(good && specialLandscapeAreaM2 <= irrigatedAreaM2)) {
    throw new DomainError('ORDINANCE_OUT_OF_DOMAIN', { referenceEvapotranspiration, etaf, irrigatedAreaM2, specialLandscapeAreaM2 });
  }
  const adjusted = etaf * irrigatedAreaM2 + (1 - etaf) * specialLandscapeAreaM2;
  const squareFeet = squareFeetFromSquareMetres(adjusted as Quantity<'m2'>);
  return litresFromGallons(inchesFromMillimetres(referenceEvapotranspiration) * GALLONS_PER_INCH_SQUARE_FOOT * squareFeet);
}

/**
 * The yearly ordinance figure, from normal reference evapotranspiration: what is shown beside a month's allowance.
 *
 * @param monthlyNormals - Normal reference evapotranspiration, twelve months, January first. [mm], one per month
 * @param area - Adjustment factor, irrigated area LA and special landscape area SLA. [m2]
 * @returns Allowed volume of a normal year. [L]
 * @throws {DomainError} `MONTHLY_NORMALS_INVALID` when there are not twelve; `ORDINANCE_OUT_OF_DOMAIN` as for a month.
 * @source California Model Water Efficient Landscape Ordinance, 23 CCR 492.4, Appendix A and B.
 */
export function yearlyOrdinanceAllowance(monthlyNormals: readonly Quantity<'mm'>[], area: OrdinanceArea): Quantity<'L'> {
  return ordinanceAllowance(yearlyNormal(monthlyNormals), area);
}

/**
 * Estimated total water use of a hydrozone by the ordinance's worksheet (ETWU).
 *
 * ETWU = ETo · 0.62 · ETAF · A with ETAF = PF / IE
 *
 * @param referenceEvapotranspiration - Yearly reference evapotranspiration. [mm]
 * @param plantFactor - Plant factor PF of the hydrozone; 1 for special landscape area. [–]
 * @param irrigationEfficiency - Irrigation efficiency IE: 0.75 overhead spray, 0.81 drip. [–]
 * @param area - Area of the hydrozone. [m2]
 * @returns Estimated water use of a year. [L]
 * @throws {DomainError} `ORDINANCE_OUT_OF_DOMAIN` when the efficiency is not above 0 and up to 1 or a value is below zero.
 * @source California Model Water Efficient Landscape Ordinance, Appendix B.
 * @example estimatedTotalWaterUse(ETo 43.0 in, PF 0.2, IE 0.81, 1,310 ft²) // 8,626 gal
 */
export function estimatedTotalWaterUse(
  referenceEvapotranspiration: Quantity<'mm'>,
  plantFactor: number,
  irrigationEfficiency: number,
  area: Quantity<'m2'>,
): Quantity<'L'> {
  if (!(irrigationEfficiency > 0 && irrigationEfficiency <= 1 && plantFactor >= 0 && area >= 0 && referenceEvapotranspiration >= 0)) {
    throw new DomainError('ORDINANCE_OUT_OF_DOMAIN', { referenceEvapotranspiration, plantFactor, irrigationEfficiency, area });
  }
  const adjusted = squareMetresFromSquareFeet(squareFeetFromSquareMetres(area) * (plantFactor / irrigationEfficiency));
  return ordinanceAllowance(referenceEvapotranspiration, {
    etaf: 1,
    irrigatedAreaM2: adjusted,
    specialLandscapeAreaM2: 0 as Quantity<'m2'>,
  });
}
