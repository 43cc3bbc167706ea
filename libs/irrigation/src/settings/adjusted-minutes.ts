import { DomainError } from '@rillbook/units/domain-error.js';

/** Half a step minus floating-point dust still rounds up, as 15 minutes at 90 % on a whole-minute timer run 14. */
const DUST = 1e-9;

/**
 * Minutes that a station really runs per start.
 *
 * minutes · percent / 100, rounded to the controller's step where one is given and only then
 *
 * @param minutes - Minutes per start at 100 %. [min]
 * @param percent - Percent adjust in force; above 100 lengthens. [%]
 * @param minuteStep - Resolution of the controller's run times; null does not round. [min]
 * @returns Minutes per start. [min]
 * @throws {DomainError} `SETTINGS_OUT_OF_DOMAIN` when minutes or percent are below zero or the step is not above zero.
 */
export function adjustedMinutes(minutes: number, percent: number, minuteStep: number | null): number {
  if (!(minutes >= 0 && percent >= 0 && Number.isFinite(minutes * percent)) || (minuteStep !== null && !(minuteStep > 0))) {
    throw new DomainError('SETTINGS_OUT_OF_DOMAIN', { minutes, percent, minuteStep });
  }
  const exact = (minutes * percent) / 100;
  return minuteStep === null ? exact : Math.round(exact / minuteStep + DUST) * minuteStep;
}
