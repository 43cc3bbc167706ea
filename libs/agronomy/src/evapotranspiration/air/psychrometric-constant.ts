import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';

/** Specific heat of air over ratio of molecular weights and latent heat: c_p / (ε·λ). [1/°C] */
const PSYCHROMETRIC_COEFFICIENT = 0.665e-3;

/**
 * Psychrometric constant, γ (FAO-56, Eq. 8).
 *
 * γ = 0.665·10⁻³ · P
 *
 * @param pressure - Atmospheric pressure. [kPa]
 * @returns Psychrometric constant. [kPa/°C]
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 8.
 * @example psychrometricConstant(kilopascals(81.8)) // 0.054, FAO-56 Example 2
 */
export function psychrometricConstant(pressure: Quantity<'kPa'>): Quantity<'kPa/°C'> {
  return finiteQuantity(PSYCHROMETRIC_COEFFICIENT * pressure, 'PRESSURE_OUT_OF_DOMAIN');
}
