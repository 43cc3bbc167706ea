import type { ControllerTraits } from '../../settings/controller-traits.js';
import { layOutStart } from '../../settings/replay/lay-out-start.js';
import { percentInForce } from '../../settings/replay/percent-in-force.js';
import type { Program } from '../../settings/settings-fact.js';
import { patternOf } from '../days/day-pattern.js';
import { rulesInMonth } from '../days/rules-of-zone.js';
import { soakAfter } from '../demand/cycles-of-run.js';
import { traitsOfMonth } from '../judge/plan-runs.js';
import { placeStarts, type Placing, type UnplacedProgram } from '../layout/place-starts.js';
import { openHours } from '../layout/water-window.js';
import type { PlanInput } from '../plan-input.js';
import { dayAfter } from './fitting/programs-of.js';

/**
 * Moves the start times of programs so that all of them end within the hours; as many starts as before, one program after the other or side
 * by side as timer, meter and main allow.
 *
 * @param input - The controller and the month. [code]
 * @returns The move. [code]
 */
export function startsMoved(input: PlanInput): Placing {
  const rules = rulesInMonth(input.rules, input.month, input.place);
  const hours = openHours(input.window, rules, input.zones);
  const traits = traitsOfMonth(input.traits, input.month);
  const limits = { runsAtOnce: Math.max(1, Math.floor(input.traits.runsAtOnce ?? 1)), flowLimitLPerMin: input.flowLimitLPerMin };
  return (programs) => {
    const { starts, dayLater, excess } = placeStarts(
      programs.map((program) => unplaced(input, program, traits)),
      hours,
      limits,
    );
    if (excess > 0) return null;
    return programs.map((program, at) => ({
      ...program,
      days: dayLater[at] ? dayAfter(program.days) : program.days,
      starts: starts[at] ?? [],
    }));
  };
}

function unplaced(input: PlanInput, program: Program, traits: ControllerTraits): UnplacedProgram {
  const inForce = percentInForce(program.adjustPercent, traits, Number(input.month.slice(5)) - 1);
  const starts = new Set(program.starts).size;
  const zones = program.stations.flatMap((run) =>
    input.zones.filter(({ station }) => station === run.station).map((zone) => ({ run, zone })),
  );
  // A zone is dry again when its run has soaked in: only then the next start may come.
  const apart = zones.map(({ run, zone }) => {
    const minutes = (run.minutes * inForce) / 100;
    return minutes + soakAfter(zone.intake, minutes);
  });
  const { mask, perWeek } = patternOf(program.days, `${input.month}-01`);
  return {
    mask,
    isDaily: perWeek === 7,
    length: Math.max(0, ...layOutStart(program.stations, inForce, traits).map(({ end }) => end)),
    starts,
    apart: starts > 1 ? Math.max(0, ...apart) : 0,
    flowLPerMin: Math.max(0, ...zones.map(({ zone }) => zone.flowLPerMin)),
  };
}
