import type { Quantity } from '@rillbook/units/quantity.js';
import { runTimeMultiplier } from '../uniformity/run-time-multiplier.js';
import { cycleLimit, cyclesFor } from './cycle-limit.js';
import { baseMinutes, multipliedMinutes } from './run-minutes.js';
import { soakMinutes } from './soak.js';

/** What a zone's irrigation is laid out from. */
export interface RunInput {
  readonly netDepth: Quantity<'mm'>;
  readonly precipitationRate: Quantity<'mm/h'>;
  readonly distributionUniformity: number;
  readonly surfaceAccumulation: Quantity<'mm'>;
  readonly intakeRate: Quantity<'mm/h'>;
}

/** An irrigation of one zone: minutes, and how they are divided so that nothing runs off. */
export interface RunSchedule {
  readonly baseMinutes: Quantity<'min'>;
  readonly totalMinutes: Quantity<'min'>;
  /** Longest cycle without runoff, or null where the soil takes all that comes. */
  readonly longestCycle: Quantity<'min'> | null;
  readonly cycles: number;
  readonly minutesPerCycle: Quantity<'min'>;
  /** Pause between cycles, or null where there is only one. */
  readonly soakMinutes: Quantity<'min'> | null;
}

/**
 * Lays out one irrigation of a zone: base minutes, multiplied for unevenness, divided into cycles with a soak between them.
 *
 * @param input - Net depth, rate and uniformity of the zone, accumulation and intake of its soil. [mm], [mm/h] and [–]
 * @returns Minutes, cycles and soak. [min]
 * @throws {DomainError} `RUN_TIME_OUT_OF_DOMAIN`, `UNIFORMITY_OUT_OF_DOMAIN`, `CYCLE_LIMIT_OUT_OF_DOMAIN` or `SOAK_OUT_OF_DOMAIN` for a value
 * outside the domain of its formula.
 * @source Irrigation Association (2005) cycle-and-soak formula as coded in a university package; run-time multiplier from memory.
 * @example 0.2 in at 1.6 in/h, DU 0.65, clay: 7.5 min base, 9.5 in all, two cycles of 4.7 min, soak 120 min
 */
export function runSchedule(input: RunInput): RunSchedule {
  const base = baseMinutes(input.netDepth, input.precipitationRate);
  const totalMinutes = multipliedMinutes(base, runTimeMultiplier(input.distributionUniformity));
  const longestCycle = cycleLimit(input.surfaceAccumulation, input.precipitationRate, input.intakeRate);
  const cycles = cyclesFor(totalMinutes, longestCycle);
  return {
    baseMinutes: base,
    totalMinutes,
    longestCycle,
    cycles,
    minutesPerCycle: (totalMinutes / cycles) as Quantity<'min'>,
    soakMinutes: cycles > 1 ? soakMinutes(input.surfaceAccumulation, input.intakeRate) : null,
  };
}
