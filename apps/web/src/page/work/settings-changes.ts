import type { IntlShape } from 'react-intl';
import type { Formats } from '../../i18n/formats.js';
import { wordOf } from '../../says/saying.js';
import { clockInWords, daysInWords } from '../../programs/days-in-words.js';

export interface ComparedProgram {
  readonly name: string;
  readonly days: string;
  readonly starts: readonly string[];
  readonly adjustPercent?: number | null;
  readonly stations: readonly {
    readonly station: number;
    readonly minutes: number;
    readonly cycles?: number | null;
    readonly soakMinutes?: number | null;
  }[];
}

export interface ComparedSettings {
  readonly state: string;
  readonly programs: readonly ComparedProgram[];
}

const FULL = 100;
const sorted = (starts: readonly string[]): string => [...starts].sort().join();

/** All minutes of a program at its percent, for one start. */
export const minutesOf = ({ stations, adjustPercent }: ComparedProgram): number =>
  (stations.reduce((sum, { minutes }) => sum + minutes, 0) * (adjustPercent ?? FULL)) / FULL;

/** What changed from one set of settings to the next, each change as a phrase; none where both water alike. */
export function settingsChanges(intl: IntlShape, formats: Formats, before: ComparedSettings, found: ComparedSettings): readonly string[] {
  const state =
    before.state === found.state
      ? []
      : [intl.formatMessage({ id: 'property.change.state' }, { state: wordOf(intl, 'controller', found.state) })];
  const names = [...new Set([...before.programs, ...found.programs].map(({ name }) => name))].sort();
  const programs = names.flatMap((name) => {
    const [was, is] = [before, found].map((settings) => settings.programs.find((program) => program.name === name));
    if (!was) return is ? [intl.formatMessage({ id: 'property.change.added' }, { name })] : [];
    if (!is) return [intl.formatMessage({ id: 'property.change.removed' }, { name })];
    return programChanges(intl, formats, was, is);
  });
  return [...state, ...programs];
}

function programChanges(intl: IntlShape, formats: Formats, was: ComparedProgram, is: ComparedProgram): string[] {
  const { name } = is;
  const percent = (program: ComparedProgram): string => formats.percent((program.adjustPercent ?? FULL) / FULL);
  const starts = (program: ComparedProgram): string =>
    intl.formatList(
      [...program.starts].sort().map((clock) => clockInWords(formats, clock)),
      { type: 'conjunction' },
    ) || intl.formatMessage({ id: 'property.change.noStarts' });
  const total = (program: ComparedProgram): number => program.stations.reduce((sum, { minutes }) => sum + minutes, 0);
  const stations = changedStations(was, is);
  return [
    ...(was.days === is.days
      ? []
      : [
          intl.formatMessage(
            { id: 'property.change.days' },
            { name, found: daysInWords(intl, formats, is.days), before: daysInWords(intl, formats, was.days) },
          ),
        ]),
    ...(sorted(was.starts) === sorted(is.starts)
      ? []
      : [intl.formatMessage({ id: 'property.change.starts' }, { name, found: starts(is), before: starts(was) })]),
    ...(percent(was) === percent(is)
      ? []
      : [intl.formatMessage({ id: 'property.change.percent' }, { name, found: percent(is), before: percent(was) })]),
    ...(stations === 0
      ? []
      : [
          intl.formatMessage(
            { id: 'property.change.minutes' },
            { name, count: stations, found: formats.number(total(is), 1), before: formats.number(total(was), 1) },
          ),
        ]),
  ];
}

/** In how many stations the minutes differ; a station without minutes is not there. */
function changedStations(was: ComparedProgram, is: ComparedProgram): number {
  const minutes = (program: ComparedProgram, station: number): number =>
    program.stations.reduce((sum, line) => (line.station === station ? sum + line.minutes : sum), 0);
  const stations = new Set([...was.stations, ...is.stations].map(({ station }) => station));
  return [...stations].filter((station) => minutes(was, station) !== minutes(is, station)).length;
}
