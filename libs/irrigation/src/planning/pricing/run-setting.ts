import type { Program, StationRun } from '../../settings/settings-fact.js';
import { cyclesOfRun, soakAfter } from '../demand/cycles-of-run.js';
import type { PlanFrame, PreparedZone } from './prepared-zone.js';

const DUST = 1e-9;

/** A station as it would be set in one program, and the presses that it takes there. */
export interface RunSetting {
  readonly run: StationRun;
  readonly presses: number;
}

/**
 * How a station is set so that it runs some steps at a percent: minutes, cycles and soak, as found where that does.
 *
 * @param prepared - The zone. [min]
 * @param frame - Resolution and abilities of the timer. [min]
 * @param steps - Run per start, in steps of the timer; above zero. [steps]
 * @param percent - Percent in force, at most 100. [%]
 * @param found - The station as the program has it now, or null. [min]
 * @returns The setting and its presses: minutes, cycles and soak count one each where they change. [min]
 */
export function runSetting(prepared: PreparedZone, frame: PlanFrame, steps: number, percent: number, found: StationRun | null): RunSetting {
  const { step } = frame;
  // What the records have above the longest run is not what the timer is set to.
  const asFound = found !== null && found.minutes <= frame.mostMinutes + DUST && stepsAt(found.minutes, percent, frame) === steps;
  const minutes = asFound ? found.minutes : Math.ceil(((steps - 0.5) * 100) / percent - DUST) * step;
  const [cycles, soakMinutes] = cyclesAndSoak(prepared, frame, steps * step, found);
  const run = { station: prepared.zone.station, minutes, cycles, soakMinutes };
  return { run, presses: pressesBetween(found, run) };
}

/**
 * Entries that change a station of a program: minutes, cycles, and the soak where there is more than one cycle.
 *
 * @param found - The station as set now, or null. [min]
 * @param wanted - The station as wanted. [min]
 * @returns How many. [–]
 */
export function pressesBetween(found: StationRun | null, wanted: StationRun): number {
  const before = found?.cycles ?? 1;
  const ofSoak = wanted.cycles > 1 && (before < 2 || wanted.soakMinutes !== found?.soakMinutes);
  return Number(wanted.minutes !== found?.minutes) + Number(wanted.cycles !== before) + Number(ofSoak);
}

function cyclesAndSoak(prepared: PreparedZone, frame: PlanFrame, run: number, found: StationRun | null): readonly [number, number] {
  const asFound = found?.soakMinutes ?? 0;
  if (!frame.cycleSoak) return [1, asFound];
  if (found && soaksAsFound(prepared, frame.step, run, found)) return [found.cycles, found.soakMinutes];
  const { cycles, soakMinutes } = cyclesOfRun(prepared.zone.intake, run, frame.step);
  return [cycles, cycles > 1 ? soakMinutes : asFound];
}

function soaksAsFound(prepared: PreparedZone, step: number, run: number, found: StationRun): boolean {
  const longest = Math.ceil(run / found.cycles / step - DUST) * step;
  const soaks = found.cycles === 1 || found.soakMinutes >= soakAfter(prepared.zone.intake, longest);
  return longest <= prepared.longestCycle + DUST && soaks;
}

/**
 * Steps that minutes of a program really run per start, as the timer rounds them.
 *
 * @param minutes - Minutes as set. [min]
 * @param percent - Percent in force. [%]
 * @param frame - Resolution and longest run of the timer. [min]
 * @returns Steps. [steps]
 */
export function stepsAt(minutes: number, percent: number, frame: PlanFrame): number {
  const { step, mostMinutes } = frame;
  return Math.round((Math.min(minutes, mostMinutes) * percent) / 100 / step + DUST);
}

/**
 * A station as a program has it now: its lines taken together.
 *
 * @param program - The program, or undefined where the slot is empty. [code]
 * @param station - The station. [–]
 * @returns The run, or null where the program does not water it. [min]
 */
export function stationNow(program: Program | undefined, station: number): StationRun | null {
  const lines = (program?.stations ?? []).filter((run) => run.station === station && run.minutes > 0);
  const first = lines[0];
  return first ? { ...first, minutes: lines.reduce((sum, { minutes }) => sum + minutes, 0) } : null;
}
