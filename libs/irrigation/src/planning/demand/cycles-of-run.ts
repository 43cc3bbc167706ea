import { cycleLimit } from '../../hardware/run-time/cycle-limit.js';
import type { ZoneIntake } from '../plan-input.js';

/** Floating-point dust of steps. */
const DUST = 1e-9;

/** How a run is divided: cycles, the longest of them, and the pause that each needs before the next. [min] */
export interface CyclesOfRun {
  readonly cycles: number;
  readonly longest: number;
  readonly soakMinutes: number;
}

/**
 * Longest cycle that a timer can set and the soil takes.
 *
 * @param intake - Rate and soil of the zone; null is no limit. [mm/h] and [mm]
 * @param step - Resolution of the timer. [min]
 * @returns Whole steps; infinite where the soil takes all that comes, 0 where it takes less than one step. [min]
 */
export function longestCycle(intake: ZoneIntake | null, step: number): number {
  const limit = intake && cycleLimit(intake.surfaceAccumulation, intake.precipitationRate, intake.intakeRate);
  return limit === null ? Number.POSITIVE_INFINITY : Math.floor(limit / step + DUST) * step;
}

/**
 * Pause after a cycle until what it left standing has gone in: (PR − IR) · t / IR, in whole minutes.
 *
 * @param intake - Rate and soil of the zone; null is no pause. [mm/h] and [mm]
 * @param minutes - The cycle. [min]
 * @returns Whole minutes. [min]
 * @source Arithmetic; a full cycle of RTmax gives 60 · ASA / IR, as `soakMinutes`.
 */
export function soakAfter(intake: ZoneIntake | null, minutes: number): number {
  if (intake === null || intake.precipitationRate <= intake.intakeRate) return 0;
  return Math.ceil(((intake.precipitationRate - intake.intakeRate) * minutes) / intake.intakeRate - DUST);
}

/**
 * Divides a run into the fewest cycles that the soil takes.
 *
 * @param intake - Rate and soil of the zone; null is no limit. [mm/h] and [mm]
 * @param minutes - The run, at most what the soil takes in any number of cycles. [min]
 * @param step - Resolution of the timer. [min]
 * @returns Cycles of whole steps and their soak. [min]
 */
export function cyclesOfRun(intake: ZoneIntake | null, minutes: number, step: number): CyclesOfRun {
  const most = longestCycle(intake, step);
  const cycles = Number.isFinite(most) ? Math.max(1, Math.ceil(minutes / most - DUST)) : 1;
  const longest = Math.ceil(minutes / cycles / step - DUST) * step;
  return { cycles, longest, soakMinutes: cycles > 1 ? soakAfter(intake, longest) : 0 };
}

/**
 * Longest run of a day that goes in within some hours: as many cycles, with their soaks between, as fit.
 *
 * @param intake - Rate and soil of the zone; null is no limit. [mm/h] and [mm]
 * @param step - Resolution of the timer. [min]
 * @param hours - The hours, in minutes. [min]
 * @param mostCycles - Cycles that the timer can make of it. [–]
 * @returns Whole steps. [min]
 */
export function longestRunWithin(intake: ZoneIntake | null, step: number, hours: number, mostCycles: number): number {
  const most = longestCycle(intake, step);
  const within = Math.floor(hours / step + DUST) * step;
  if (most === 0 || most >= within) return most === 0 ? 0 : within;
  const soak = soakAfter(intake, most);
  return most * Math.max(1, Math.min(mostCycles, Math.floor((within + soak) / (most + soak) + DUST)));
}
