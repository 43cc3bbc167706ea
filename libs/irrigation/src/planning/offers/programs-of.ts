import { dateOfDayNumber, dayNumberOfDate } from '../../calendar/local-date.js';
import type { Program, ProgramDays, StationRun } from '../../settings/settings-fact.js';
import { EVERY_DAY, maskOfWeekdays, weekdayPattern } from '../days/day-pattern.js';
import { soakAfter } from '../demand/cycles-of-run.js';
import { placeStarts, type UnplacedProgram } from '../layout/place-starts.js';
import type { PlanInput } from '../plan-input.js';
import type { Assignment, Ground } from '../pricing/assignment.js';
import type { PreparedZone } from '../pricing/prepared-zone.js';
import { runSetting, stationNow } from '../pricing/run-setting.js';
import type { SlotOption } from '../pricing/slots.js';

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** Programs with their starts, and by how much the last run is too late. [min] */
export interface PlacedPrograms {
  readonly programs: readonly Program[];
  readonly excess: number;
}

/**
 * Programs as they are entered: an assignment with names, stations in their order, and start times.
 *
 * @param input - The controller. [code]
 * @param ground - What was searched on. [–]
 * @param assignment - What was found. [–]
 * @returns The programs that water anything. [code]
 */
export function programsOf(input: PlanInput, ground: Ground, assignment: Assignment): PlacedPrograms {
  const taken = new Set((input.present ?? []).map(({ name }) => name));
  const free = [...LETTERS].filter((letter) => !taken.has(letter));
  const used = assignment.options.flatMap((option, slot) => {
    const program = option && unplaced(ground, assignment, slot, option);
    const pattern = assignment.patterns[slot];
    if (!program || !pattern || !program.stations.length) return [];
    const name = ground.slots[slot]?.present?.name ?? free.shift() ?? `P${slot + 1}`;
    return [{ name, days: pattern.days, adjustPercent: option.percent, program }];
  });
  const limits = { runsAtOnce: Math.max(1, Math.floor(input.traits.runsAtOnce ?? 1)), flowLimitLPerMin: input.flowLimitLPerMin };
  const placed = placeStarts(
    used.map(({ program }) => program),
    ground.frame.hours,
    input.traits,
    limits,
  );
  return {
    programs: used.map(({ name, days, adjustPercent, program }, at) => ({
      name,
      days: (placed.starts[at]?.[0] ?? 0) < ground.frame.hours.from ? dayAfter(days) : days,
      starts: placed.starts[at] ?? [],
      adjustPercent,
      stations: program.stations,
    })),
    excess: placed.excess,
  };
}

/**
 * A night that began on Monday goes on on Tuesday: what starts after midnight is set for the day after.
 *
 * @param days - Days on which the night begins. [code]
 * @returns Days to set. [code]
 */
export function dayAfter(days: ProgramDays): ProgramDays {
  if (days.kind === 'every') return { ...days, from: dateOfDayNumber(dayNumberOfDate(days.from) + 1) };
  if (days.kind !== 'weekdays') return days;
  const mask = maskOfWeekdays(days.weekdays);
  return weekdayPattern(((mask << 1) | (mask >> 6)) & EVERY_DAY).days;
}

// Stations that could run in one go are divided too where that fills the soaks of others.
function divided(
  run: StationRun,
  minutes: number,
  least: number,
  { prepared, step }: { readonly prepared: PreparedZone; readonly step: number },
): StationRun {
  const cycles = Math.min(Math.max(run.cycles, least), Math.max(1, Math.floor(minutes / step + 1e-9)));
  if (cycles <= run.cycles) return run;
  return { ...run, cycles, soakMinutes: soakAfter(prepared.zone.intake, Math.ceil(minutes / cycles / step - 1e-9) * step) };
}

function unplaced(ground: Ground, { slotOf, steps, patterns, split }: Assignment, slot: number, option: SlotOption): UnplacedProgram {
  const inSlot = ground.zones.map((prepared, zone) => ({ prepared, zone })).filter(({ zone }) => slotOf[zone] === slot);
  const present = ground.slots[slot]?.present;
  const runs = inSlot.map(({ prepared, zone }) => ({
    prepared,
    minutes: (steps[zone] as number) * ground.frame.step,
    setting: runSetting(prepared, ground.frame, steps[zone] as number, option.inForce, stationNow(present, prepared.zone.station)).run,
  }));
  runs.sort((a, b) => a.setting.station - b.setting.station);
  return {
    mask: patterns[slot]?.mask ?? 0,
    stations: runs.map(({ setting, minutes, prepared }) =>
      divided(setting, minutes, split?.[slot] ?? 1, { prepared, step: ground.frame.step }),
    ),
    inForce: option.inForce,
    starts: option.starts,
    apart: option.starts > 1 ? Math.max(0, ...runs.map(({ prepared, minutes }) => minutes + soakAfter(prepared.zone.intake, minutes))) : 0,
    flowLPerMin: Math.max(0, ...runs.map(({ prepared }) => prepared.zone.flowLPerMin)),
  };
}
