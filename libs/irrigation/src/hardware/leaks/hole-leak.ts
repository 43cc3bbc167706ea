import type { Quantity } from '@rillbook/units/quantity.js';
import { orificeFlow, SHARP_HOLE } from '../flow/orifice-flow.js';

/**
 * Leak rate of a hole in a pipe under pressure.
 *
 * Q = Cd · π/4 · d² · √(2 P / ρ), Cd = 0.62; in US units 29.84 · 0.62 · d² [in] · √P [psi] gpm
 *
 * @param diameter - Diameter of the hole. [mm]
 * @param pressure - Pressure in the pipe. [kPa]
 * @returns Leak rate. [L/min]
 * @throws {DomainError} `ORIFICE_OUT_OF_DOMAIN` when diameter or pressure are below zero or not finite.
 * @source Orifice equation; within 3 % of the leak tables of several public water suppliers at 60 psi.
 * @example 1/8 in at 60 psi // 8.47 L/min, 3,224 gal a day
 */
export function leakOfHole(diameter: Quantity<'mm'>, pressure: Quantity<'kPa'>): Quantity<'L/min'> {
  return orificeFlow(diameter, pressure, SHARP_HOLE);
}
