import { DomainError } from '@rillbook/units/domain-error.js';

/** Flow at which a meter is tested. */
export type TestFlow = 'minimum' | 'intermediate' | 'maximum';

/** What a good meter registers of the true volume, as shares. */
export interface RegistrationLimits {
  readonly from: number;
  readonly to: number;
}

const AT_NORMAL_FLOW: RegistrationLimits = { from: 0.985, to: 1.015 };
const AT_MINIMUM_FLOW: RegistrationLimits = { from: 0.95, to: 1.01 };

/**
 * Limits within which a good meter registers.
 *
 * @param flow - Test flow: at minimum flow the limits are wider and lower. [code]
 * @returns Lowest and highest share of the true volume. [–]
 * @source US Navy MO-221 (meters), following industry limits.
 * @example registrationLimits('minimum') // 0.95 to 1.01
 */
export function registrationLimits(flow: TestFlow): RegistrationLimits {
  return flow === 'minimum' ? AT_MINIMUM_FLOW : AT_NORMAL_FLOW;
}

/**
 * Registration error of a meter against a standard. Its base is the meter, not the standard.
 *
 * error = 100 · (meter − standard) / meter
 *
 * @param meterVolume - Volume that the meter registered. [any]
 * @param standardVolume - Volume that the standard measured, in the same unit. [any]
 * @returns Error in percent; above zero the meter is fast. [%]
 * @throws {DomainError} `REGISTRATION_OUT_OF_DOMAIN` when the meter registered nothing, or a volume is below zero or not finite.
 * @source Code of Maryland Regulations, COMAR 20.70.06.04.
 */
export function registrationError(meterVolume: number, standardVolume: number): number {
  if (!(meterVolume > 0 && standardVolume >= 0 && Number.isFinite(meterVolume + standardVolume))) {
    throw new DomainError('REGISTRATION_OUT_OF_DOMAIN', { meterVolume, standardVolume });
  }
  return (100 * (meterVolume - standardVolume)) / meterVolume;
}

/**
 * What a registration error says of a meter.
 *
 * @param error - Registration error. [%]
 * @returns Fast when it registers more than flowed, slow when less, true when neither. [code]
 * @throws {DomainError} `REGISTRATION_OUT_OF_DOMAIN` when not finite.
 * @source Code of Maryland Regulations, COMAR 20.70.06.04: positive means fast.
 */
export function paceOfMeter(error: number): 'fast' | 'slow' | 'true' {
  if (!Number.isFinite(error)) throw new DomainError('REGISTRATION_OUT_OF_DOMAIN', { error });
  if (error === 0) return 'true';
  return error > 0 ? 'fast' : 'slow';
}
