import type { StationRun } from '../../../settings/settings-fact.js';
import { cyclesOfRun, shortestSoak, soakAfter } from '../../demand/cycles-of-run.js';
import type { UnplacedProgram } from '../../layout/place-starts.js';
import { startLength } from '../../layout/start-length.kernel.js';
import type { Assignment, Ground } from '../../pricing/assignment.js';
import type { PreparedZone } from '../../pricing/prepared-zone.js';
import { pressesBetween, runSetting, stationNow } from '../../pricing/run-setting.js';
import type { SlotOption } from '../../pricing/slots.js';

const MOST_DIVISION = 8;
const DUST = 1e-6;
const MINUTES_PER_HOUR = 60;

/**
 * How runs are divided: into the fewest cycles that the soil takes, each soaking in wholly; into more, so that stations fill each other's soaks;
 * or besides with pauses no longer than keeps water from running off.
 */
export type Division = 'fewest' | 'more' | 'closest';

/** A station of a program: its minutes per start, as it is set now, and as it would be in the fewest cycles. */
interface Member {
  readonly prepared: PreparedZone;
  readonly minutes: number;
  readonly found: StationRun | null;
  readonly run: StationRun;
  readonly presses: number;
}

/** A program with its runs divided, and the presses that it takes beyond what the search has counted. */
export interface DividedProgram {
  readonly members: readonly Member[];
  readonly stations: readonly StationRun[];
  readonly division: Division;
  readonly presses: number;
  readonly unplaced: UnplacedProgram;
}

/**
 * Divides the runs of one program so that a start of it is short.
 *
 * @param ground - Zones and slots. [–]
 * @param assignment - What was found. [–]
 * @param slot - The program's slot. [–]
 * @param division - How runs may be divided. [code]
 * @returns The program, its stations in their order; null where no zone is in it. [min]
 */
export function divideRuns(ground: Ground, assignment: Assignment, slot: number, division: Division): DividedProgram | null {
  const option = assignment.options[slot];
  const members = option ? membersOf(ground, assignment, slot, option) : [];
  if (!option || !members.length) return null;
  const { step, cycleSoak } = ground.frame;
  const fewest = members.map(({ run }) => run);
  const stations = division === 'fewest' || !cycleSoak ? fewest : shortestOf(members, fewest, step, division);
  const pattern = assignment.patterns[slot];
  const days = { mask: pattern?.mask ?? 0, isDaily: pattern?.perWeek === 7, starts: option.starts };
  return dividedSo({ members, division, unplaced: days }, stations, step);
}

/**
 * A program with its runs divided as given.
 *
 * @param program - The program. [min]
 * @param stations - Its stations, as they are to be set. [min]
 * @param step - Resolution of the timer. [min]
 * @returns The program. [min]
 */
export function dividedSo(
  program: Pick<DividedProgram, 'members' | 'division'> & { readonly unplaced: Pick<UnplacedProgram, 'mask' | 'isDaily' | 'starts'> },
  stations: readonly StationRun[],
  step: number,
): DividedProgram {
  const { members, division, unplaced } = program;
  const length = lengthOf(members, stations, step);
  const by = { division, starts: unplaced.starts, length };
  return {
    members,
    stations,
    division,
    presses: members.reduce((sum, { found, presses }, at) => sum + pressesBetween(found, stations[at] as StationRun) - presses, 0),
    unplaced: {
      ...unplaced,
      length,
      apart: by.starts > 1 ? Math.max(...members.map((member, at) => apartOf(member, stations[at] as StationRun, by))) : 0,
      flowLPerMin: Math.max(...members.map(({ prepared }) => prepared.zone.flowLPerMin)),
    },
  };
}

function membersOf(ground: Ground, { slotOf, steps }: Assignment, slot: number, option: SlotOption): readonly Member[] {
  const present = ground.slots[slot]?.present;
  const members = ground.zones.flatMap((prepared, zone) => {
    if (slotOf[zone] !== slot) return [];
    const found = stationNow(present, prepared.zone.station);
    const { run, presses } = runSetting(prepared, ground.frame, steps[zone] as number, option.inForce, found);
    return [{ prepared, minutes: (steps[zone] as number) * ground.frame.step, found, run, presses }];
  });
  return members.sort((a, b) => a.run.station - b.run.station);
}

interface ApartBy {
  readonly division: Division;
  readonly starts: number;
  readonly length: number;
}

// What a zone's start needs until the next one: its run and its soak where it runs in one go, else what stands when all has ended.
function apartOf({ prepared, minutes }: Member, { cycles }: StationRun, { division, starts, length }: ApartBy): number {
  const { intake } = prepared.zone;
  if (cycles > 1 && intake) return length + Math.ceil((intake.surfaceAccumulation * MINUTES_PER_HOUR) / intake.intakeRate - DUST);
  const run = { cycles: starts, longest: minutes };
  return minutes + (division === 'closest' ? shortestSoak(intake, minutes * starts, run) : soakAfter(intake, minutes));
}

function shortestOf(members: readonly Member[], fewest: readonly StationRun[], step: number, division: Division): readonly StationRun[] {
  const least = members.reduce((sum, { minutes }) => sum + minutes, 0);
  let [best, shortest] = [fewest, lengthOf(members, fewest, step)];
  for (let cycles = 1; cycles <= MOST_DIVISION && shortest > least + DUST; cycles += 1) {
    const stations = members.map((member) => dividedInto(member, cycles, step, division));
    const length = lengthOf(members, stations, step);
    if (length < shortest - DUST) [best, shortest] = [stations, length];
  }
  return best;
}

function dividedInto({ prepared, minutes, run }: Member, least: number, step: number, division: Division): StationRun {
  const { intake } = prepared.zone;
  const few = cyclesOfRun(intake, minutes, step).cycles;
  const longest = Math.ceil(minutes / Math.max(few, least) / step - DUST) * step;
  const cycles = Math.max(1, Math.ceil(minutes / longest - DUST));
  if (cycles === 1) return run.cycles === 1 ? run : { ...run, cycles: 1 };
  const soakMinutes = division === 'closest' ? shortestSoak(intake, minutes, { cycles, longest }) : soakAfter(intake, longest);
  return { ...run, cycles, soakMinutes };
}

function lengthOf(members: readonly Member[], stations: readonly StationRun[], step: number): number {
  const minutes = members.map((member) => member.minutes);
  return startLength(
    minutes,
    stations.map(({ cycles }) => cycles),
    stations.map(({ soakMinutes }) => soakMinutes),
    step,
    new Float64Array(minutes.length),
  );
}
