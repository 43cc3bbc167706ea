import { DomainError } from '@rillbook/units/domain-error.js';
import { kilopascalsFromPsi } from '@rillbook/units/pressure.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { IrrigationMethod } from '../irrigation-method.js';

/** Pressure at the head for which a method's hardware is made, as a range, and where it comes from. */
export interface DesignPressure {
  readonly from: Quantity<'kPa'>;
  readonly to: Quantity<'kPa'>;
  readonly source: string;
}

const AGENCIES = 'desert water agencies: spray 30 psi, rotor 45 to 50 psi';
const COMMON_PRACTICE = 'common practice, no source';

/** [psi] at the head, lowest and highest. */
const PSI: Readonly<Record<IrrigationMethod, { readonly from: number; readonly to: number; readonly source: string } | null>> = {
  spray: { from: 30, to: 30, source: AGENCIES },
  rotor: { from: 45, to: 50, source: AGENCIES },
  'rotary nozzle': { from: 40, to: 45, source: COMMON_PRACTICE },
  bubbler: { from: 20, to: 30, source: COMMON_PRACTICE },
  microspray: { from: 20, to: 30, source: COMMON_PRACTICE },
  drip: { from: 20, to: 30, source: COMMON_PRACTICE },
  'subsurface drip': { from: 20, to: 30, source: COMMON_PRACTICE },
  hand: null,
};

/**
 * Pressure at the head for which the hardware of a method is made.
 *
 * @param method - Irrigation method, in the words of the import folder. [code]
 * @returns The range and its source, or null for watering by hand. [kPa]
 * @throws {DomainError} `METHOD_UNKNOWN` when the word is none of the methods.
 * @source Desert water agencies for spray and rotor; the rest common practice, marked so in `source`.
 */
export function designPressure(method: IrrigationMethod): DesignPressure | null {
  const found = PSI[method];
  if (found === undefined) throw new DomainError('METHOD_UNKNOWN', { method });
  return found && { from: kilopascalsFromPsi(found.from), to: kilopascalsFromPsi(found.to), source: found.source };
}
