import { DomainError } from '@rillbook/units/domain-error.js';
import { litresPerHourFromLitresPerMinute } from '@rillbook/units/flow.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';
import { precipitationRateFromFlow } from './precipitation-rate.js';

/**
 * Application rate of a grid of drip emitters.
 *
 * PR = q / (row spacing · emitter spacing), q per hour; in US units 231.1 · q [gph] / (row [in] · emitter [in])
 *
 * @param emitterFlow - Flow of one emitter. [L/min]
 * @param rowSpacing - Distance between lines. [m]
 * @param emitterSpacing - Distance between emitters along a line. [m]
 * @returns Rate over the ground that the grid covers. [mm/h]
 * @throws {DomainError} `PRECIPITATION_RATE_OUT_OF_DOMAIN` when a spacing is not above zero or the flow is below zero or not finite.
 * @source Arithmetic: an emitter waters row spacing times emitter spacing.
 * @example 0.9 gph, rows 18 in, emitters 12 in // 24.5 mm/h, 0.963 in/h
 */
export function precipitationRateOfDripGrid(
  emitterFlow: Quantity<'L/min'>,
  rowSpacing: Quantity<'m'>,
  emitterSpacing: Quantity<'m'>,
): Quantity<'mm/h'> {
  if (!(rowSpacing > 0 && emitterSpacing > 0)) throw new DomainError('PRECIPITATION_RATE_OUT_OF_DOMAIN', { rowSpacing, emitterSpacing });
  return precipitationRateFromFlow(emitterFlow, (rowSpacing * emitterSpacing) as Quantity<'m2'>);
}

/**
 * Application rate of emitters by their number on a square metre.
 *
 * PR [mm/h] = L/h per m²
 *
 * @param emitterFlow - Flow of one emitter. [L/min]
 * @param density - Emitters on a square metre. [1/m2]
 * @returns Rate over the ground. [mm/h]
 * @throws {DomainError} `PRECIPITATION_RATE_OUT_OF_DOMAIN` when flow or density are below zero or not finite.
 * @source Metric drip example of a public extension text.
 * @example two emitters of 3 L/h per m² // 6 mm/h: 2.3 L/m²/d take 23 min/d
 */
export function precipitationRateOfEmitterDensity(emitterFlow: Quantity<'L/min'>, density: number): Quantity<'mm/h'> {
  if (!(emitterFlow >= 0 && density >= 0)) throw new DomainError('PRECIPITATION_RATE_OUT_OF_DOMAIN', { emitterFlow, density });
  return finiteQuantity(litresPerHourFromLitresPerMinute(emitterFlow) * density, 'PRECIPITATION_RATE_OUT_OF_DOMAIN');
}
