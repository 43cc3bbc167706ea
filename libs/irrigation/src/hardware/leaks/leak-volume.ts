import { DomainError } from '@rillbook/units/domain-error.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';

const MINUTES_PER_DAY = 1440;

/**
 * Water that a steady leak loses.
 *
 * V = Q · 1440 · days
 *
 * @param flow - Leak rate. [L/min]
 * @param days - How long it has leaked. [d]
 * @returns Volume lost. [L]
 * @throws {DomainError} `LEAK_OUT_OF_DOMAIN` when flow or days are below zero or not finite.
 * @source Arithmetic.
 * @example 13,000 gal a day for 30 days // 390,000 gal
 */
export function leakVolume(flow: Quantity<'L/min'>, days: number): Quantity<'L'> {
  if (!(flow >= 0 && days >= 0)) throw new DomainError('LEAK_OUT_OF_DOMAIN', { flow, days });
  return finiteQuantity(flow * MINUTES_PER_DAY * days, 'LEAK_OUT_OF_DOMAIN');
}

/**
 * Steady flow that makes a daily loss: the same turned round.
 *
 * @param litresPerDay - Loss in a day. [L]
 * @returns Leak rate. [L/min]
 * @throws {DomainError} `LEAK_OUT_OF_DOMAIN` when below zero or not finite.
 * @source Arithmetic.
 */
export function flowOfDailyLoss(litresPerDay: Quantity<'L'>): Quantity<'L/min'> {
  if (!(litresPerDay >= 0)) throw new DomainError('LEAK_OUT_OF_DOMAIN', { litresPerDay });
  return finiteQuantity(litresPerDay / MINUTES_PER_DAY, 'LEAK_OUT_OF_DOMAIN');
}
