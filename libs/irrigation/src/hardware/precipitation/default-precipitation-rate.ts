import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetresPerHourFromInchesPerHour } from '@rillbook/units/depth-rate.js';
import type { MethodDefault } from '../uniformity/default-uniformity.js';
import type { IrrigationMethod } from '../irrigation-method.js';

const COMMON_PRACTICE = 'common practice';

/** [in/h], as the trade knows them; null where water is given as a volume and a rate over the area says nothing. */
const INCHES_PER_HOUR: Readonly<Record<IrrigationMethod, MethodDefault | null>> = {
  spray: { value: 1.5, source: 'Utah state guide: 0.5 in takes 20 minutes with pop-up sprays' },
  rotor: { value: 0.5, source: `${COMMON_PRACTICE}: 0.4 to 0.6 in/h` },
  'rotary nozzle': { value: 0.45, source: `${COMMON_PRACTICE}: 0.4 to 0.6 in/h` },
  bubbler: null,
  microspray: { value: 1, source: COMMON_PRACTICE },
  drip: { value: 0.6, source: `${COMMON_PRACTICE}: 0.6 gph emitters at 12 by 18 in give 0.64 in/h` },
  'subsurface drip': { value: 0.6, source: `${COMMON_PRACTICE}: 0.6 gph emitters at 12 by 18 in give 0.64 in/h` },
  hand: null,
};

/**
 * Precipitation rate that is typical of a method, to be offered where neither flow nor rate is recorded; never used in silence.
 *
 * @param method - Irrigation method, in the words of the import folder. [code]
 * @returns The typical rate and its source, or null where the method has none. [mm/h]
 * @throws {DomainError} `METHOD_UNKNOWN` when the word is none of the methods.
 * @source Utah state landscape guide for spray; the rest common practice, marked so in `source`.
 */
export function defaultPrecipitationRate(method: IrrigationMethod): MethodDefault | null {
  const found = INCHES_PER_HOUR[method];
  if (found === undefined) throw new DomainError('METHOD_UNKNOWN', { method });
  return found && { value: millimetresPerHourFromInchesPerHour(found.value), source: found.source };
}
