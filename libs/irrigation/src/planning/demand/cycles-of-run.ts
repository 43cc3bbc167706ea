import { cycleLimit } from '../../hardware/run-time/cycle-limit.js';
import type { ZoneIntake } from '../plan-input.js';

const MINUTES_PER_HOUR = 60;
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
 * Shortest pause between cycles with which nothing runs off: what stands on the ground need not have gone in wholly, if what comes next still
 * finds room on it. After k cycles of t minutes k · t · (PR − IR) − (k − 1) · pause · IR may stand, at most ASA.
 *
 * @param intake - Rate and soil of the zone; null is no pause. [mm/h] and [mm]
 * @param minutes - The run. [min]
 * @param run - Its cycles and the longest of them, at most what the soil takes at once; the last may be shorter. [min]
 * @returns Whole minutes, never more than `soakAfter` the longest cycle. [min]
 * @source The storage picture behind the Irrigation Association's (2005) cycle limit, as `runOffMinutes`.
 */
export function shortestSoak(intake: ZoneIntake | null, minutes: number, run: Omit<CyclesOfRun, 'soakMinutes'>): number {
  const { cycles, longest } = run;
  if (intake === null || cycles < 2 || intake.precipitationRate <= intake.intakeRate) return 0;
  const { precipitationRate, intakeRate, surfaceAccumulation } = intake;
  const growing = precipitationRate - intakeRate;
  const held = surfaceAccumulation * MINUTES_PER_HOUR;
  const atEnd = (minutes * growing - held) / (cycles - 1);
  const before = cycles > 2 ? ((cycles - 1) * longest * growing - held) / (cycles - 2) : 0;
  return Math.max(0, Math.ceil(Math.max(atEnd, before) / intakeRate - DUST));
}

/**
 * Longest run of a start that goes in within some hours: in as many cycles as the timer can make, with the shortest pauses between.
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
  if (most === 0 || most >= within || intake === null) return most === 0 ? 0 : within;
  // What goes in, and what still stands when the last cycle ends.
  const taken = (hours * intake.intakeRate + intake.surfaceAccumulation * MINUTES_PER_HOUR) / intake.precipitationRate;
  let minutes = Math.min(within, most * mostCycles, Math.floor(taken / step + DUST) * step);
  while (minutes > most && lengthAlone(intake, minutes, step) > hours + DUST) minutes -= step;
  return minutes;
}

function lengthAlone(intake: ZoneIntake, minutes: number, step: number): number {
  const run = cyclesOfRun(intake, minutes, step);
  return minutes + (run.cycles - 1) * shortestSoak(intake, minutes, run);
}
