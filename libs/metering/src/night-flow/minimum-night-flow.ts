import { DomainError } from '@rillbook/units/domain-error.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';

/** Hours of the night in which the flow is least, as minutes of the local day. */
export const nightWindow = { fromMinute: 120, untilMinute: 240 } as const;

/** Share of people who are awake and use water in an hour of that window. [–] */
export const ACTIVE_SHARE = 0.06;

/** Water of one flush of a cistern. [L] */
export const LITRES_PER_CISTERN = 10;

/** Losses of mains that no search finds, in an hour on a kilometre. [L/km/h] */
const BACKGROUND_PER_KILOMETRE = 40;

/**
 * Water that people use in an hour of the night.
 *
 * Q = 0.06 · people · 10 L
 *
 * @param people - People who sleep on the property. [persons]
 * @returns Use in an hour of the night window. [L/h]
 * @throws {DomainError} `NIGHT_FLOW_OUT_OF_DOMAIN` when below zero or not finite.
 * @source Water-loss literature on minimum night flow: 6 % active, cisterns of 10 L.
 * @example legitimateNightUse(100) // 60 L/h
 */
export function legitimateNightUse(people: number): Quantity<'L/h'> {
  if (!(people >= 0)) throw new DomainError('NIGHT_FLOW_OUT_OF_DOMAIN', { people });
  return finiteQuantity(ACTIVE_SHARE * people * LITRES_PER_CISTERN, 'NIGHT_FLOW_OUT_OF_DOMAIN');
}

/**
 * Losses of mains in good repair that remain after every search.
 *
 * Q = 40 L/km/h · length
 *
 * @param length - Length of the mains. [m]
 * @returns Background loss. [L/h]
 * @throws {DomainError} `NIGHT_FLOW_OUT_OF_DOMAIN` when below zero or not finite.
 * @source Water-loss literature on background losses of mains.
 * @example backgroundLossOfMains(metres(1000)) // 40 L/h
 */
export function backgroundLossOfMains(length: Quantity<'m'>): Quantity<'L/h'> {
  if (!(length >= 0)) throw new DomainError('NIGHT_FLOW_OUT_OF_DOMAIN', { length });
  return finiteQuantity((BACKGROUND_PER_KILOMETRE * length) / 1000, 'NIGHT_FLOW_OUT_OF_DOMAIN');
}
