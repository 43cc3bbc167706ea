import type { Program, ProgramDays, StationRun } from '../settings/settings-fact.js';

/** A program with its days and start times in words: `Mon Wed Fri`, `daily`, `odd`, `every 3 from 2026-06-01`, and clocks as HH:MM. */
export interface ProgramInWords {
  readonly name: string;
  readonly days: string;
  readonly starts: readonly string[];
  readonly adjustPercent: number;
  readonly stations: readonly StationRun[];
}

const MINUTES_PER_HOUR = 60;

/**
 * A program in the words in which it is kept, sent and typed.
 *
 * @param program - The program. [code]
 * @returns The same program, days and starts in words. [code]
 * @example programInWords({ name: 'A', days: { kind: 'daily' }, starts: [255], adjustPercent: 80, stations: [] }).starts // ['04:15']
 */
export const programInWords = (program: Program): ProgramInWords => ({
  name: program.name,
  days: wordsOfDays(program.days),
  starts: program.starts.map(clockOfMinutes),
  adjustPercent: program.adjustPercent,
  stations: program.stations.map(({ station, minutes, cycles, soakMinutes }) => ({ station, minutes, cycles, soakMinutes })),
});

function wordsOfDays(days: ProgramDays): string {
  if (days.kind === 'weekdays') return days.weekdays.join(' ');
  return days.kind === 'every' ? `every ${days.everyDays} from ${days.from}` : days.kind;
}

const clockOfMinutes = (minutes: number): string =>
  [Math.floor(minutes / MINUTES_PER_HOUR), minutes % MINUTES_PER_HOUR].map((part) => String(part).padStart(2, '0')).join(':');
