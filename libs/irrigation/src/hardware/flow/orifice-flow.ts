import { DomainError } from '@rillbook/units/domain-error.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';

/** Density of water at 15.6 °C (60 °F), at which the US constant 29.84 holds. [kg/m3] */
const WATER_DENSITY = 999;

const MILLIMETRES_PER_METRE = 1000;
const PASCALS_PER_KILOPASCAL = 1000;
const LITRES_PER_CUBIC_METRE = 1000;
const SECONDS_PER_MINUTE = 60;

/** Discharge coefficient of a hole with a sharp edge in a pipe: middle of 0.60 to 0.65. */
export const SHARP_HOLE = 0.62;

/** Discharge coefficient of a smooth nozzle: an extension circular's nozzle table holds with it to 1 %. */
export const SMOOTH_NOZZLE = 0.97;

/**
 * Flow out of an opening under pressure (orifice equation).
 *
 * Q = Cd · π/4 · d² · √(2 P / ρ); in US units Q [gpm] = 29.84 · Cd · d² [in] · √P [psi]
 *
 * @param diameter - Diameter of the opening. [mm]
 * @param pressure - Pressure before the opening, above that of the air. [kPa]
 * @param dischargeCoefficient - Discharge coefficient Cd: `SHARP_HOLE` or `SMOOTH_NOZZLE`, or as measured. [–]
 * @returns Flow to the open air. [L/min]
 * @throws {DomainError} `ORIFICE_OUT_OF_DOMAIN` when diameter or pressure are below zero or not finite, or Cd is not within above 0 to 1.
 * @domain Water, free discharge; a supply that cannot hold the pressure gives less.
 * @source Orifice equation; 29.84 by arithmetic with water of 60 °F; Cd from memory, confirmed by published leak and nozzle tables.
 * @example 1/4 in at 60 psi, Cd 0.62 // 33.9 L/min, 8.96 gpm
 */
export function orificeFlow(diameter: Quantity<'mm'>, pressure: Quantity<'kPa'>, dischargeCoefficient: number): Quantity<'L/min'> {
  if (!(diameter >= 0 && pressure >= 0 && dischargeCoefficient > 0 && dischargeCoefficient <= 1)) {
    throw new DomainError('ORIFICE_OUT_OF_DOMAIN', { diameter, pressure, dischargeCoefficient });
  }
  const area = (Math.PI / 4) * (diameter / MILLIMETRES_PER_METRE) ** 2;
  const speed = Math.sqrt((2 * pressure * PASCALS_PER_KILOPASCAL) / WATER_DENSITY);
  return finiteQuantity(dischargeCoefficient * area * speed * LITRES_PER_CUBIC_METRE * SECONDS_PER_MINUTE, 'ORIFICE_OUT_OF_DOMAIN');
}
