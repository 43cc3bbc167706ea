import { DomainError } from '@rillbook/units/domain-error.js';
import type { WaterNeed } from '../plant-words.js';
import type { FactorRange } from './factor-range.js';

/** The list's ranges; it prints the lowest as 'below 0.10'. */
const ASSESSED: Readonly<Record<WaterNeed, FactorRange>> = {
  'very low': { low: 0, high: 0.1 },
  low: { low: 0.1, high: 0.3 },
  moderate: { low: 0.4, high: 0.6 },
  high: { low: 0.7, high: 0.9 },
};

/** The ordinance's definitions reach to 1.0, from memory. */
const HIGHEST_IN_ORDINANCE = 1;

/** Codes of the list for the four needs; U (not known) and NA (not fit for the region) are no need. */
const NEED_BY_CODE: Readonly<Record<string, WaterNeed | null>> = {
  VL: 'very low',
  LO: 'low',
  M: 'moderate',
  H: 'high',
  U: null,
  NA: null,
};

/**
 * Range of the plant factor of a category of water need as the list of assessed plants has it.
 *
 * @param waterNeed - Category of water need. [code]
 * @returns Lowest and highest factor of the category. [–]
 * @source University of California WUCOLS IV (2014).
 */
export function assessedRange(waterNeed: WaterNeed): FactorRange {
  return ASSESSED[waterNeed];
}

/**
 * Range of the plant factor of a category of water need as the state's ordinance defines it.
 *
 * @param waterNeed - Category of water need. [code]
 * @returns Lowest and highest factor of the category; that of high need reaches to 1. [–]
 * @source 23 CCR 491, definition of plant factor; from memory.
 */
export function ordinanceRange(waterNeed: WaterNeed): FactorRange {
  const { low, high } = ASSESSED[waterNeed];
  return { low, high: waterNeed === 'high' ? HIGHEST_IN_ORDINANCE : high };
}

/**
 * Category of water need of a code of the list of assessed plants.
 *
 * @param code - VL, LO, M, H, U or NA. [code]
 * @returns The category; null where the need is not known or the plant does not fit the region. [code]
 * @throws {DomainError} `WATER_NEED_CODE_UNKNOWN` when the code is none of the list.
 * @source University of California WUCOLS IV (2014).
 */
export function waterNeedOfCode(code: string): WaterNeed | null {
  const found = NEED_BY_CODE[code];
  if (found === undefined) throw new DomainError('WATER_NEED_CODE_UNKNOWN', { waterNeedCode: code });
  return found;
}
