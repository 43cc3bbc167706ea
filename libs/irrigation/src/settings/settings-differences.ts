import type { ControllerState, Program, ProgramDays, SettingsFact, StationRun } from './settings-fact.js';

/** What can differ between two facts of one controller. */
export type DifferenceKind =
  | 'state'
  | 'program-missing'
  | 'program-extra'
  | 'days'
  | 'starts'
  | 'percent'
  | 'station-missing'
  | 'station-extra'
  | 'minutes'
  | 'cycles'
  | 'soak';

/** One difference: `missing` is in the wanted settings only, `extra` in the found ones only. */
export interface SettingsDifference {
  readonly what: DifferenceKind;
  readonly program: string | null;
  readonly station: number | null;
  readonly wanted: ControllerState | ProgramDays | readonly number[] | number | null;
  readonly found: ControllerState | ProgramDays | readonly number[] | number | null;
}

/**
 * What differs between the settings that are wanted and those that were found: planned beside as found.
 *
 * The order of starts, weekdays, programs and stations makes no difference; where either state is not on, only the state is compared.
 *
 * @param wanted - The settings as planned, or as last left. [code]
 * @param found - The settings as found. [code]
 * @returns The differences, by program in the order wanted; empty when both water alike. [code]
 */
export function settingsDifferences(wanted: SettingsFact, found: SettingsFact): readonly SettingsDifference[] {
  if (wanted.state !== found.state) return [difference('state', null, null, [wanted.state, found.state])];
  if (wanted.state !== 'on') return [];
  const ofProgram = wanted.programs.flatMap((program) => {
    const other = found.programs.find(({ name }) => name === program.name);
    return other ? programDifferences(program, other) : [difference('program-missing', program.name, null, [null, null])];
  });
  const extra = found.programs.filter(({ name }) => !wanted.programs.some((program) => program.name === name));
  return [...ofProgram, ...extra.map(({ name }) => difference('program-extra', name, null, [null, null]))];
}

/**
 * Whether two facts water alike.
 *
 * @param wanted - One fact of a controller. [code]
 * @param found - Another fact of the same controller. [code]
 * @returns True when `settingsDifferences` finds none. [–]
 */
export function sameSettings(wanted: SettingsFact, found: SettingsFact): boolean {
  return settingsDifferences(wanted, found).length === 0;
}

/**
 * Whether two programs fall on the same days.
 *
 * @param one - Days of one program. [code]
 * @param other - Days of another. [code]
 * @returns True when no key has to be pressed to make them alike. [–]
 */
export function sameDays(one: ProgramDays, other: ProgramDays): boolean {
  return daysKey(one) === daysKey(other);
}

function programDifferences(wanted: Program, found: Program): readonly SettingsDifference[] {
  const { name } = wanted;
  // The same start twice is one start.
  const sorted = (starts: readonly number[]) => [...new Set(starts)].sort((a, b) => a - b);
  const differences: SettingsDifference[] = [];
  if (!sameDays(wanted.days, found.days)) differences.push(difference('days', name, null, [wanted.days, found.days]));
  if (sorted(wanted.starts).join() !== sorted(found.starts).join()) {
    differences.push(difference('starts', name, null, [sorted(wanted.starts), sorted(found.starts)]));
  }
  if (wanted.adjustPercent !== found.adjustPercent) {
    differences.push(difference('percent', name, null, [wanted.adjustPercent, found.adjustPercent]));
  }
  const stations = [...new Set([...wanted.stations, ...found.stations].map(({ station }) => station))].sort((a, b) => a - b);
  return [
    ...differences,
    ...stations.flatMap((station) => stationDifferences(name, station, stationOf(wanted, station), stationOf(found, station))),
  ];
}

function stationDifferences(program: string, station: number, wanted: StationRun | null, found: StationRun | null): SettingsDifference[] {
  if (!found) return wanted ? [difference('station-missing', program, station, [wanted.minutes, null])] : [];
  if (!wanted) return [difference('station-extra', program, station, [null, found.minutes])];
  const differences: SettingsDifference[] = [];
  if (wanted.minutes !== found.minutes) differences.push(difference('minutes', program, station, [wanted.minutes, found.minutes]));
  if (wanted.cycles !== found.cycles) differences.push(difference('cycles', program, station, [wanted.cycles, found.cycles]));
  // A soak between cycles means nothing where there is one cycle.
  const soaks = wanted.cycles > 1 && found.cycles > 1 && wanted.soakMinutes !== found.soakMinutes;
  if (soaks) differences.push(difference('soak', program, station, [wanted.soakMinutes, found.soakMinutes]));
  return differences;
}

// Several lines of one station add their minutes; a station set to zero minutes is not there.
function stationOf({ stations }: Program, station: number): StationRun | null {
  const lines = stations.filter((run) => run.station === station && run.minutes > 0);
  const first = lines[0];
  return first ? { ...first, minutes: lines.reduce((sum, { minutes }) => sum + minutes, 0) } : null;
}

function daysKey(days: ProgramDays): string {
  switch (days.kind) {
    case 'weekdays': {
      const weekdays = [...new Set(days.weekdays)].sort();
      return weekdays.length === 7 ? 'daily' : weekdays.join();
    }
    case 'every':
      return `every ${days.everyDays} ${days.from}`;
    default:
      return days.kind;
  }
}

function difference(
  what: DifferenceKind,
  program: string | null,
  station: number | null,
  [wanted, found]: readonly [SettingsDifference['wanted'], SettingsDifference['found']],
): SettingsDifference {
  return { what, program, station, wanted, found };
}
