import { DomainError } from '@rillbook/units/domain-error.js';

/** Share of the mean that the driest area still counts for: the trade's low-half approximation DU_LH = 0.4 + 0.6 DU_LQ. */
const LOW_HALF_AT_ZERO = 0.4;
const LOW_HALF_SLOPE = 0.6;

/**
 * Run-time multiplier: how much longer a zone runs so that its low half gets the need.
 *
 * RTM = 1 / (0.4 + 0.6 · DU_LQ)
 *
 * @param distributionUniformity - Distribution uniformity of the low quarter, DU_LQ. [–]
 * @returns Multiplier of the base run time or of the net volume. [–]
 * @throws {DomainError} `UNIFORMITY_OUT_OF_DOMAIN` outside the domain.
 * @domain above 0 to 1
 * @source EPA WaterSense water budget approach (RTM = 1/(0.4 + 0.6 DU_LQ)); Irrigation Association scheduling multiplier; from memory.
 * @example runTimeMultiplier(0.65) // 1.2658
 */
export function runTimeMultiplier(distributionUniformity: number): number {
  if (!(distributionUniformity > 0 && distributionUniformity <= 1)) {
    throw new DomainError('UNIFORMITY_OUT_OF_DOMAIN', { distributionUniformity });
  }
  return 1 / (LOW_HALF_AT_ZERO + LOW_HALF_SLOPE * distributionUniformity);
}
