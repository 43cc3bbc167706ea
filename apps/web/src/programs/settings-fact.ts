import type {
  ControllerState,
  Program,
  ProgramDays,
  SettingsFact,
  SettingsRecord,
  Weekday,
} from '@rillbook/irrigation/settings/settings-fact.js';

/** Settings as the server gives them. */
export interface GivenSettings {
  readonly localTime: string;
  readonly record: string;
  readonly state: string;
  readonly programs: readonly GivenProgram[];
}

export interface GivenProgram {
  readonly name: string;
  readonly days: string;
  readonly starts: readonly string[];
  readonly adjustPercent?: number | null;
  readonly stations: readonly GivenStation[];
}

export interface GivenStation {
  readonly station: number;
  readonly minutes: number;
  readonly cycles?: number | null;
  readonly soakMinutes?: number | null;
}

/** What usage shows of settings that nobody has read, as the server gives it. */
export interface InferredSettings {
  readonly through: string;
  readonly programs: readonly {
    readonly name: string;
    readonly days: string;
    readonly starts: readonly string[];
    readonly minutes: readonly number[];
    readonly confidence: number;
  }[];
}

/** Days and starts as usage shows them, to begin from; the minutes of each station are left to be typed. */
export const begunFrom = ({ through, programs }: InferredSettings): GivenSettings => ({
  localTime: through,
  record: 'found',
  state: 'on',
  programs: programs.map(({ name, days, starts }) => ({ name, days, starts, adjustPercent: 100, stations: [] })),
});

export const WEEKDAYS: readonly Weekday[] = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const EVERY = /^every (\d+) from (\d{4}-\d{2}-\d{2})$/;

/** The days of a program from the record's words; what is none of them is no day at all. */
export function daysOf(words: string): ProgramDays {
  if (words === 'daily' || words === 'odd' || words === 'even') return { kind: words };
  const every = EVERY.exec(words);
  if (every) return { kind: 'every', everyDays: Number(every[1]), from: every[2] ?? '' };
  return { kind: 'weekdays', weekdays: WEEKDAYS.filter((day) => words.split(' ').includes(day)) };
}

/** Minutes after midnight of a clock 'HH:MM'. */
export const minutesOfClock = (clock: string): number => {
  const [hours = 0, minutes = 0] = clock.split(':').map(Number);
  return hours * 60 + minutes;
};

const programOf = ({ name, days, starts, adjustPercent, stations }: GivenProgram): Program => ({
  name,
  days: daysOf(days),
  starts: starts.map(minutesOfClock),
  adjustPercent: adjustPercent ?? 100,
  stations: stations.map(({ station, minutes, cycles, soakMinutes }) => ({
    station,
    minutes,
    cycles: cycles ?? 1,
    soakMinutes: soakMinutes ?? 0,
  })),
});

/** Settings as the computing library compares them. */
export const factOf = ({ localTime, record, state, programs }: GivenSettings): SettingsFact => ({
  effectiveAt: localTime,
  record: record as SettingsRecord,
  state: state as ControllerState,
  programs: programs.map(programOf),
});

/** The programs as they are sent: nothing of the cache but what was set. */
export const sentPrograms = (programs: readonly GivenProgram[]) =>
  programs.map(({ name, days, starts, adjustPercent, stations }) => ({
    name,
    days,
    starts: [...starts],
    adjustPercent: adjustPercent ?? null,
    stations: stations
      .filter(({ minutes }) => minutes > 0)
      .map(({ station, minutes, cycles, soakMinutes }) => ({ station, minutes, cycles: cycles ?? null, soakMinutes: soakMinutes ?? null })),
  }));
