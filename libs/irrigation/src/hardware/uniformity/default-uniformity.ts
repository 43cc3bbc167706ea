import { DomainError } from '@rillbook/units/domain-error.js';
import type { IrrigationMethod } from '../irrigation-method.js';

/** A documented default and where it comes from; 'common practice' where no published source was read. */
export interface MethodDefault {
  readonly value: number;
  readonly source: string;
}

const WATERSENSE = 'EPA WaterSense water budget approach, default DU_LQ (from memory)';
const COMMON_PRACTICE = 'common practice';

const UNIFORMITY: Readonly<Record<IrrigationMethod, MethodDefault>> = {
  spray: { value: 0.65, source: WATERSENSE },
  rotor: { value: 0.7, source: WATERSENSE },
  'rotary nozzle': { value: 0.7, source: COMMON_PRACTICE },
  bubbler: { value: 0.8, source: COMMON_PRACTICE },
  microspray: { value: 0.7, source: WATERSENSE },
  drip: { value: 0.7, source: `${WATERSENSE}: drip, not pressure-compensated` },
  'subsurface drip': { value: 0.9, source: `${WATERSENSE}: drip, pressure-compensated` },
  hand: { value: 0.7, source: COMMON_PRACTICE },
};

/**
 * Distribution uniformity of the low quarter that is assumed for a method where nobody has tested it.
 *
 * @param method - Irrigation method, in the words of the import folder. [code]
 * @returns The default DU_LQ and its source. [–]
 * @throws {DomainError} `METHOD_UNKNOWN` when the word is none of the methods.
 * @source EPA WaterSense water budget approach (from memory); the rest common practice, marked so in `source`.
 */
export function defaultUniformity(method: IrrigationMethod): MethodDefault {
  const found = UNIFORMITY[method];
  if (!found) throw new DomainError('METHOD_UNKNOWN', { method });
  return found;
}
