import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { minutesOfClock } from './clock-time.js';
import type { KeptProgram, KeptStation } from './kept-program.js';
import { programDaysOf } from './program-days.js';

/** What a controller can hold; null where nobody has said. */
export interface ControllerHolds {
  readonly name: string;
  readonly stations: number;
  readonly programs: number | null;
  readonly startsPerProgram: number | null;
  readonly maxMinutes: number | null;
  readonly adjustScope: 'controller' | 'program' | null;
}

const MINUTES_PER_DAY = 1440;
const AS_SET_PERCENT = 100;
const MOST_PERCENT = 1000;
const MOST_CYCLES = 100;
const LONGEST_NAME = 60;
/** No timer holds more; it keeps a hostile input small. */
const MOST_PROGRAMS = 100;

/** Refuses programs that the controller cannot hold, saying which, what was found and what is expected. */
export function judgePrograms(controller: ControllerHolds, programs: readonly KeptProgram[]): void {
  const most = controller.programs ?? MOST_PROGRAMS;
  if (programs.length > most) refuse('programs', programs.length, `at most ${most}, which controller ${controller.name} holds`);
  const twice = repeated(programs.map(({ name }) => name));
  if (twice !== null) refuse('programs', twice, 'a name for each program');
  for (const program of programs) judgeProgram(controller, program);
  const percents = [...new Set(programs.map(({ adjustPercent }) => adjustPercent ?? AS_SET_PERCENT))];
  if (controller.adjustScope === 'controller' && percents.length > 1)
    refuse('programs, percent', percents.join(' and '), `one percent, which controller ${controller.name} has for all its programs`);
}

function judgeProgram(controller: ControllerHolds, { name, days, starts, adjustPercent, stations }: KeptProgram): void {
  if (!name || name.length > LONGEST_NAME) refuse('program', name, `a name of at most ${LONGEST_NAME} characters`);
  const at = `program ${name}`;
  if (!programDaysOf(days)) refuse(`${at}, days`, days, '`Mon Wed Fri`, `daily`, `odd`, `even` or `every 3 from 2026-06-01`');
  judgeStarts(controller, at, starts);
  if (!between(adjustPercent ?? AS_SET_PERCENT, 0, MOST_PERCENT)) refuse(`${at}, percent`, adjustPercent, `0 to ${MOST_PERCENT}`);
  const twice = repeated(stations.map(({ station }) => station));
  if (twice !== null) refuse(`${at}, station`, twice, 'each station once in a program');
  for (const station of stations) judgeStation(controller, at, station);
}

function judgeStarts(controller: ControllerHolds, at: string, starts: readonly string[]): void {
  for (const start of starts) if (minutesOfClock(start) === null) refuse(`${at}, starts`, start, 'HH:MM from 00:00 to 23:59');
  const twice = repeated(starts);
  if (twice !== null) refuse(`${at}, starts`, twice, 'each start once');
  const most = controller.startsPerProgram ?? MINUTES_PER_DAY;
  if (starts.length > most)
    refuse(`${at}, starts`, starts.length, `at most ${most}, which a program of controller ${controller.name} holds`);
}

function judgeStation(controller: ControllerHolds, within: string, { station, minutes, cycles, soakMinutes }: KeptStation): void {
  if (!between(station, 1, controller.stations))
    refuse(`${within}, station`, station, `1 to ${controller.stations}, which controller ${controller.name} has`);
  const at = `${within}, station ${station}`;
  const most = controller.maxMinutes ?? MINUTES_PER_DAY;
  if (!between(minutes, 0, most)) refuse(`${at}, minutes`, minutes, `0 to ${most}`);
  if (!between(cycles ?? 1, 1, MOST_CYCLES)) refuse(`${at}, cycles`, cycles, `1 to ${MOST_CYCLES}`);
  if (!between(soakMinutes ?? 0, 0, MINUTES_PER_DAY)) refuse(`${at}, soak`, soakMinutes, `0 to ${MINUTES_PER_DAY} minutes`);
}

const between = (value: number, least: number, most: number): boolean => value >= least && value <= most;

function refuse(field: string, found: unknown, expected: string): never {
  throw platformProblems.valueRefused({ field, found, expected });
}

/** What stands twice in a list, or null. */
function repeated<T>(list: readonly T[]): T | null {
  return list.find((one, at) => list.indexOf(one) !== at) ?? null;
}
