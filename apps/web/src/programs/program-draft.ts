import type { IntlShape } from 'react-intl';
import { typedNumber } from '../i18n/numbers.js';
import type { GivenProgram, GivenSettings, GivenStation } from './settings-fact.js';

/** A program as it is typed: text until it is saved. */
export interface ProgramDraft {
  readonly name: string;
  readonly days: string;
  readonly starts: readonly string[];
  readonly percent: string;
  /** Minutes by station; nothing typed is not in the program. */
  readonly minutes: Readonly<Record<number, string>>;
  /** What stands there now, for the cycles and soaks that are not typed anew. */
  readonly base: readonly GivenStation[];
}

const minutesOf = (stations: readonly GivenStation[]): Record<number, string> => {
  const sums: Record<number, number> = {};
  for (const { station, minutes } of stations) sums[station] = (sums[station] ?? 0) + minutes;
  return Object.fromEntries(Object.entries(sums).map(([station, minutes]) => [station, String(minutes)]));
};

/** A program of which nothing is known yet. */
export const emptyProgram = (name: string): ProgramDraft => ({ name, days: 'daily', starts: [''], percent: '100', minutes: {}, base: [] });

/** What is on the controller as far as it is known, ready to be changed; a first program where nothing is. */
export function draftOf(settings: GivenSettings | null): readonly ProgramDraft[] {
  if (!settings || settings.programs.length === 0) return [emptyProgram('A')];
  return settings.programs.map(({ name, days, starts, adjustPercent, stations }) => ({
    name,
    days,
    starts: [...starts],
    percent: String(adjustPercent ?? 100),
    minutes: minutesOf(stations),
    base: stations.map(({ station, minutes, cycles, soakMinutes }) => ({
      station,
      minutes,
      cycles: cycles ?? null,
      soakMinutes: soakMinutes ?? null,
    })),
  }));
}

/** The first letter that no program has. */
export function nextProgramName(programs: readonly ProgramDraft[]): string {
  const taken = new Set(programs.map(({ name }) => name));
  return [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].find((letter) => !taken.has(letter)) ?? String(programs.length + 1);
}

const isUsed = ({ minutes }: ProgramDraft): boolean => Object.values(minutes).some((text) => (typedNumber(text) ?? 0) > 0);

/** What cannot be saved, as a sentence; null where all can. */
export function problemOfDrafts(intl: IntlShape, programs: readonly ProgramDraft[]): string | null {
  for (const { name, minutes, percent, days, starts } of programs) {
    const wrong = Object.entries(minutes).find(([, text]) => text.trim() !== '' && !((typedNumber(text) ?? -1) >= 0));
    if (wrong) return intl.formatMessage({ id: 'field.settings.wrongMinutes' }, { name, station: wrong[0], found: wrong[1] });
    if (!((typedNumber(percent) ?? -1) >= 0)) return intl.formatMessage({ id: 'field.settings.wrongPercent' }, { name, found: percent });
    if (days === '') return intl.formatMessage({ id: 'field.settings.noDays' }, { name });
    if (starts.every((start) => start === '') && Object.values(minutes).some((text) => (typedNumber(text) ?? 0) > 0))
      return intl.formatMessage({ id: 'field.settings.noStarts' }, { name });
  }
  return null;
}

function stationsOf({ minutes, base }: ProgramDraft): GivenStation[] {
  const order = [...new Set([...base.map(({ station }) => station), ...Object.keys(minutes).map(Number)])];
  return order.flatMap((station) => {
    const value = typedNumber(minutes[station] ?? '') ?? 0;
    const before = base.find((one) => one.station === station);
    return value > 0 ? [{ station, minutes: value, cycles: before?.cycles ?? null, soakMinutes: before?.soakMinutes ?? null }] : [];
  });
}

/** The programs that run something, as they are sent. */
export const programsOf = (drafts: readonly ProgramDraft[]): readonly GivenProgram[] =>
  drafts.filter(isUsed).map((draft) => ({
    name: draft.name,
    days: draft.days,
    starts: [...new Set(draft.starts.filter(Boolean))].sort(),
    adjustPercent: typedNumber(draft.percent),
    stations: stationsOf(draft),
  }));
