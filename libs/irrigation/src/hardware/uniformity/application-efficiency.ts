import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { lowestMean } from './catch.js';

const QUARTER = 0.25;

/** An irrigation as it was run: how long, and what was missing in the soil before it. */
export interface IrrigationRun {
  readonly hours: number;
  readonly depletion: Quantity<'mm'>;
}

/**
 * Potential application efficiency of the low quarter, PELQ.
 *
 * PELQ = mean rate caught in the lowest quarter / mean rate applied
 *
 * @param catchRates - Rate caught in each can. [mm/h]
 * @param appliedRate - Mean rate that left the nozzles, from flow and spacing. [mm/h]
 * @returns Share of the water applied that the driest quarter gets; above 1 says that catch and flow contradict each other. [–]
 * @throws {DomainError} `CATCHES_OUT_OF_DOMAIN` for the catches; `PRECIPITATION_RATE_OUT_OF_DOMAIN` when the applied rate is not above zero.
 * @source Merriam and Keller (1978), Farm Irrigation System Evaluation, pp. 41-44.
 * @example 0.7365 for their 15 cans under a head of 4.6 gpm at 30 by 50 ft
 */
export function potentialEfficiency(catchRates: readonly Quantity<'mm/h'>[], appliedRate: Quantity<'mm/h'>): number {
  if (!(appliedRate > 0 && Number.isFinite(appliedRate))) throw new DomainError('PRECIPITATION_RATE_OUT_OF_DOMAIN', { appliedRate });
  return lowestMean(catchRates, QUARTER) / appliedRate;
}

/**
 * Actual application efficiency of the low quarter, AELQ.
 *
 * AELQ = min(mean depth stored in the lowest quarter, depletion) / mean depth applied; equal to PELQ until the driest quarter is full
 *
 * @param catchRates - Rate caught in each can. [mm/h]
 * @param appliedRate - Mean rate that left the nozzles, from flow and spacing. [mm/h]
 * @param run - Length of the irrigation and depletion of the soil before it. [h] and [mm]
 * @returns Share of the water applied that the driest quarter could keep. [–]
 * @throws {DomainError} `CATCHES_OUT_OF_DOMAIN` for the catches; `PRECIPITATION_RATE_OUT_OF_DOMAIN` when the applied rate is not above zero;
 * `IRRIGATION_RUN_OUT_OF_DOMAIN` when the hours are not above zero or the depletion is below zero.
 * @source Merriam and Keller (1978), Farm Irrigation System Evaluation.
 * @example 0.634 for the same cans, 23.5 h, depletion 4.4 in
 */
export function actualEfficiency(catchRates: readonly Quantity<'mm/h'>[], appliedRate: Quantity<'mm/h'>, run: IrrigationRun): number {
  const { hours, depletion } = run;
  if (!(hours > 0 && Number.isFinite(hours) && depletion >= 0)) throw new DomainError('IRRIGATION_RUN_OUT_OF_DOMAIN', { hours, depletion });
  return Math.min(potentialEfficiency(catchRates, appliedRate), depletion / (appliedRate * hours));
}
