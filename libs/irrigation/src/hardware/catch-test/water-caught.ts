import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { precipitationRateFromCans } from '../precipitation/catch-can-rate.js';
import { meanCatch } from '../uniformity/catch.js';
import { lowQuarterUniformity } from '../uniformity/distribution-uniformity.js';

/** What a test with cans is: what each caught, how long it ran, and how wide the cans are where that is known. */
export interface CatchTest {
  readonly catches: readonly Quantity<'L'>[];
  readonly minutes: Quantity<'min'> | null;
  readonly mouthArea: Quantity<'m2'> | null;
}

/** What a test with cans tells of a zone. */
export interface CaughtWater {
  readonly meanVolume: Quantity<'L'>;
  readonly uniformity: number;
  readonly rate: Quantity<'mm/h'> | null;
}

/** The lowest quarter of fewer cans is not one. */
export const LEAST_CANS = 4;

/** Fewer cans than this tell too little of a zone to be put on record: three in the lowest quarter. An assumption; an audit sets 24 or more (common practice). */
export const LEAST_CANS_TO_TELL = 12;

/**
 * What a test with cans tells: how evenly a zone waters, and how fast.
 *
 * DU_LQ = mean of the lowest quarter / mean of all; PR = 60 · V / (t · A)
 *
 * @param test - Volumes, time and mouth of the cans. [L], [min], [m2]
 * @returns The mean volume, the uniformity of the low quarter, and the rate; null where time or mouth is not known. [L], [–], [mm/h]
 * @throws {DomainError} `CATCHES_OUT_OF_DOMAIN` when there are fewer than four cans, one is below zero or not finite, or all are empty;
 * `CATCH_TEST_OUT_OF_DOMAIN` when time or mouth are not above zero.
 * @source Merriam and Keller (1978), Farm Irrigation System Evaluation; the rate as in a public worksheet of irrigation auditors.
 */
export function waterCaught(test: CatchTest): CaughtWater {
  const { catches, minutes, mouthArea } = test;
  if (catches.length < LEAST_CANS) throw new DomainError('CATCHES_OUT_OF_DOMAIN', { count: catches.length });
  const meanVolume = meanCatch(catches) as Quantity<'L'>;
  const rate = minutes === null || mouthArea === null ? null : precipitationRateFromCans(meanVolume, minutes, mouthArea);
  return { meanVolume, uniformity: lowQuarterUniformity(catches), rate };
}
