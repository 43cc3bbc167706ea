import { DomainError } from '@rillbook/units/domain-error.js';

/** Hydrologic soil group: how fast soaked ground takes in water, A the fastest (TR-55, Appendix A). */
export type SoilGroup = 'A' | 'B' | 'C' | 'D';

/** What covers the ground, as far as a water balance of landscapes asks. */
export type GroundCover = 'open space, good' | 'impervious';

/** A part of a catchment. */
export type CoveredArea = {
  /** Its area, or its share of the whole; all parts in the same unit. [m2] */
  readonly area: number;
  /** Curve number of soil and cover. [–] */
  readonly curveNumber: number;
};

/** Curve numbers for average wetness before the storm: lawns and parks with grass on more than 75 %; roofs, streets and drives. */
const BY_COVER: Readonly<Record<GroundCover, Readonly<Record<SoilGroup, number>>>> = {
  'open space, good': { A: 39, B: 61, C: 74, D: 80 },
  impervious: { A: 98, B: 98, C: 98, D: 98 },
};

/**
 * Runoff curve number of a cover on a soil, CN (TR-55, Table 2-2a).
 *
 * @param cover - What covers the ground. [code]
 * @param soilGroup - Hydrologic soil group. [code]
 * @returns The curve number. [–]
 * @throws {DomainError} `GROUND_COVER_UNKNOWN` when a word is none of the table.
 * @source USDA-NRCS (1986), Urban Hydrology for Small Watersheds, TR-55, Table 2-2a.
 * @example coverCurveNumber('open space, good', 'B') // 61
 */
export function coverCurveNumber(cover: GroundCover, soilGroup: SoilGroup): number {
  const found = BY_COVER[cover]?.[soilGroup];
  if (found === undefined) throw new DomainError('GROUND_COVER_UNKNOWN', { cover, soilGroup });
  return found;
}

/**
 * Curve number of several covers together, weighted by area (TR-55, chapter 2).
 *
 * CN = Σ(area · CN) / Σ area
 *
 * @param parts - The parts of the catchment. [m2]
 * @returns The weighted curve number; TR-55 rounds it to a whole one. [–]
 * @throws {DomainError} `AREAS_OUT_OF_DOMAIN` when an area is negative or all together are not above 0; `CURVE_NUMBER_OUT_OF_DOMAIN` when one
 * is not above 0 and up to 100.
 * @source USDA-NRCS (1986), Urban Hydrology for Small Watersheds, TR-55, chapter 2, Example 2-1.
 * @example weightedCurveNumber([{ area: 0.3, curveNumber: 61 }, { area: 0.7, curveNumber: 74 }]) // 70.1
 */
export function weightedCurveNumber(parts: readonly CoveredArea[]): number {
  const total = parts.reduce((sum, { area }) => sum + area, 0);
  if (!(total > 0 && Number.isFinite(total)) || parts.some(({ area }) => !(area >= 0)))
    throw new DomainError('AREAS_OUT_OF_DOMAIN', { parts });
  for (const { curveNumber } of parts) {
    if (!(curveNumber > 0 && curveNumber <= 100)) throw new DomainError('CURVE_NUMBER_OUT_OF_DOMAIN', { curveNumber });
  }
  return parts.reduce((sum, { area, curveNumber }) => sum + area * curveNumber, 0) / total;
}
