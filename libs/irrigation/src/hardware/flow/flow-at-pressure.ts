import { DomainError } from '@rillbook/units/domain-error.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';

/** Opening whose flow answers to pressure. */
export type Opening = 'nozzle' | 'burst' | 'background leaks' | 'pressure-compensated emitter';

/**
 * Exponent of the pressure: nozzles and bursts have a fixed opening; the many small leaks of mains widen with pressure; pressure-compensated
 * emitters hold their flow within their range.
 */
export const pressureExponent: Readonly<Record<Opening, number>> = {
  nozzle: 0.5,
  burst: 0.5,
  'background leaks': 1.5,
  'pressure-compensated emitter': 0,
};

/**
 * Flow at another pressure (square-root rule).
 *
 * Q2 = Q1 · (P2 / P1)^x, x = 0.5 for nozzles, heads, non-compensating emitters and bursts; nothing flows without pressure
 *
 * @param flow - Flow at the first pressure. [L/min]
 * @param fromPressure - Pressure at which that flow holds. [kPa]
 * @param toPressure - Pressure at which the flow is wanted. [kPa]
 * @param opening - What the water leaves by; its exponent is in `pressureExponent`. [code]
 * @returns Flow at the second pressure. [L/min]
 * @throws {DomainError} `FLOW_AT_PRESSURE_OUT_OF_DOMAIN` when the first pressure is not above zero, or the second or the flow is below zero or
 * not finite.
 * @source Orifice equation; exponents 1.5 and 0.5 of water-loss literature; 0 for compensated emitters by their definition.
 * @example 1.5 gpm at 30 psi is 2.121 gpm at 60 psi
 */
export function flowAtPressure(
  flow: Quantity<'L/min'>,
  fromPressure: Quantity<'kPa'>,
  toPressure: Quantity<'kPa'>,
  opening: Opening = 'nozzle',
): Quantity<'L/min'> {
  if (!(flow >= 0 && fromPressure > 0 && toPressure >= 0)) {
    throw new DomainError('FLOW_AT_PRESSURE_OUT_OF_DOMAIN', { flow, fromPressure, toPressure });
  }
  if (toPressure === 0) return finiteQuantity(0, 'FLOW_AT_PRESSURE_OUT_OF_DOMAIN');
  return finiteQuantity(flow * (toPressure / fromPressure) ** pressureExponent[opening], 'FLOW_AT_PRESSURE_OUT_OF_DOMAIN');
}
