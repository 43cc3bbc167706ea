import { DomainError } from '@rillbook/units/domain-error.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';

const MINUTES_PER_HOUR = 60;

/**
 * Precipitation rate from catch cans.
 *
 * PR = 60 · V / (t · A); in US units 3.66 · V [ml] / (t [min] · A [in²])
 *
 * @param meanVolume - Mean volume that the cans caught. [L]
 * @param minutes - Length of the test. [min]
 * @param mouthArea - Area of a can's mouth. [m2]
 * @returns Mean rate of the test. [mm/h]
 * @throws {DomainError} `CATCH_TEST_OUT_OF_DOMAIN` when time or mouth are not above zero, or the catch is below zero or not finite.
 * @source Public worksheet of irrigation auditors; constant by arithmetic.
 * @example 25 ml in 10 min, mouth 16.6 in² // 14.0 mm/h, 0.551 in/h
 */
export function precipitationRateFromCans(
  meanVolume: Quantity<'L'>,
  minutes: Quantity<'min'>,
  mouthArea: Quantity<'m2'>,
): Quantity<'mm/h'> {
  if (!(mouthArea > 0)) throw new DomainError('CATCH_TEST_OUT_OF_DOMAIN', { mouthArea });
  return precipitationRateFromDepth((meanVolume / mouthArea) as Quantity<'mm'>, minutes);
}

/**
 * Precipitation rate from the depth of water in straight-sided cans.
 *
 * PR = 60 · depth / t
 *
 * @param depth - Mean depth that was caught. [mm]
 * @param minutes - Length of the test. [min]
 * @returns Mean rate of the test. [mm/h]
 * @throws {DomainError} `CATCH_TEST_OUT_OF_DOMAIN` when the time is not above zero, or the catch is below zero or not finite.
 * @source Public extension page on catch cans.
 * @example 0.1 in in 10 min // 15.24 mm/h: 100 min per inch
 */
export function precipitationRateFromDepth(depth: Quantity<'mm'>, minutes: Quantity<'min'>): Quantity<'mm/h'> {
  if (!(depth >= 0 && minutes > 0)) throw new DomainError('CATCH_TEST_OUT_OF_DOMAIN', { depth, minutes });
  return finiteQuantity((MINUTES_PER_HOUR * depth) / minutes, 'CATCH_TEST_OUT_OF_DOMAIN');
}
