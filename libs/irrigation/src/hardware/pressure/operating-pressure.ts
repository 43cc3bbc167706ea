import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { IrrigationMethod } from '../irrigation-method.js';
import { designPressure } from './design-pressure.js';

/** Operating over design pressure above which droplets become mist: 45 psi at a spray head, 75 psi at a rotor. Common practice, no source. */
export const MISTING_RATIO = 1.5;

/** Methods that throw water through the air; the others have no droplets that the wind could take. */
const THROWING: readonly IrrigationMethod[] = ['spray', 'rotor', 'rotary nozzle', 'microspray'];

/** How a zone's pressure stands to that for which its hardware is made. */
export interface PressureJudgement {
  /** Operating pressure over the nearer end of the design range; 1 within it. [–] */
  readonly ratio: number;
  /** Flow over that at the design pressure, by the square-root rule; null where emitters may hold their flow. [–] */
  readonly flowRatio: number | null;
  /** Whether droplets are likely to be mist; null where the method throws none. */
  readonly likelyMisting: boolean | null;
}

/**
 * Judges a zone's operating pressure against the design pressure of its method.
 *
 * ratio = P / nearer end of the design range; flow ratio = √ratio; misting is likely where the ratio exceeds `MISTING_RATIO`
 *
 * @param method - Irrigation method, in the words of the import folder. [code]
 * @param pressure - Pressure at the head while the zone runs. [kPa]
 * @returns The ratios and whether misting is likely, or null for watering by hand. [–]
 * @throws {DomainError} `METHOD_UNKNOWN` when the word is none of the methods; `PRESSURE_OUT_OF_DOMAIN` when below zero or not finite.
 * @source Design pressures as in `designPressure`; misting 'well above' them, the ratio itself being common practice without a source.
 * @example a spray head at 60 psi: ratio 2, flow 1.41 times the designed, likely misting
 */
export function judgePressure(method: IrrigationMethod, pressure: Quantity<'kPa'>): PressureJudgement | null {
  if (!(pressure >= 0 && Number.isFinite(pressure))) throw new DomainError('PRESSURE_OUT_OF_DOMAIN', { pressure });
  const design = designPressure(method);
  if (!design) return null;
  const ratio = pressure / Math.min(design.to, Math.max(design.from, pressure));
  const throws = THROWING.includes(method);
  return { ratio, flowRatio: throws ? Math.sqrt(ratio) : null, likelyMisting: throws ? ratio > MISTING_RATIO : null };
}
