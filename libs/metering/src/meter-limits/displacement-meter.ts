import { DomainError } from '@rillbook/units/domain-error.js';
import { litresPerMinuteFromGallonsPerMinute } from '@rillbook/units/flow.js';
import { millimetresFromInches } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Flows between which a displacement meter of a size is to measure. */
export interface MeterFlows {
  /** Flow at which it is tested for small flows; below it the meter may not register. */
  readonly minimumTestFlow: Quantity<'L/min'>;
  /** Largest flow of normal operation. */
  readonly maximumNormalFlow: Quantity<'L/min'>;
}

/** Nominal size [in], minimum test flow [gpm], maximum normal flow [gpm]. */
const BY_SIZE: readonly (readonly [number, number, number])[] = [
  [0.625, 0.25, 20],
  [0.75, 0.5, 30],
  [1, 0.75, 50],
  [1.5, 1.5, 100],
  [2, 2, 160],
  [3, 4, 300],
  [4, 7, 500],
  [6, 12, 1000],
];

/** Share by which a size may be off its nominal inches: metric sizes (15, 20, 25, 40, 50, 80, 100, 150 mm) name the same meters. */
const SAME_SIZE = 0.07;

/**
 * Flows between which a displacement meter is to measure, by its size.
 *
 * @param size - Nominal size of the meter. [mm]
 * @returns Minimum test flow and maximum normal flow, or null where the table has no such size. [L/min]
 * @throws {DomainError} `METER_SIZE_OUT_OF_DOMAIN` when not above zero or not finite.
 * @domain Displacement meters of 5/8 to 6 in; other kinds of meters have other limits.
 * @source Code of Maryland Regulations, COMAR 20.70.06.03, citing the water works association's limits.
 * @example displacementMeterFlows(millimetresFromInches(1)) // 2.84 and 189 L/min: 0.75 and 50 gpm
 */
export function displacementMeterFlows(size: Quantity<'mm'>): MeterFlows | null {
  if (!(size > 0 && Number.isFinite(size))) throw new DomainError('METER_SIZE_OUT_OF_DOMAIN', { size });
  const found = BY_SIZE.find(([inches]) => Math.abs(size / millimetresFromInches(inches) - 1) <= SAME_SIZE);
  if (!found) return null;
  const [, minimum, maximum] = found;
  return {
    minimumTestFlow: litresPerMinuteFromGallonsPerMinute(minimum),
    maximumNormalFlow: litresPerMinuteFromGallonsPerMinute(maximum),
  };
}
