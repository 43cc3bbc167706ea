import type { ControllerState, Program, SettingsRecord, StationRun } from '@rillbook/irrigation/settings/settings-fact.js';
import type { EpochMs } from '../columns/column.js';
import type { AcceptedRow, ImportedValues } from './imported-row.js';
import type { WritableRow } from './write-rows.js';

/** Everything that the lines of one controller and instant say, as one fact; `typed` are their cells, program by program. */
export interface ImportedSettings {
  readonly property: string;
  readonly controller: string;
  readonly effectiveAt: EpochMs;
  readonly record: SettingsRecord;
  readonly state: ControllerState;
  readonly programs: readonly Program[];
  readonly typed: { readonly lines: readonly Readonly<Record<string, string>>[] };
}

type Line = AcceptedRow<'settings'>;

/** Puts the accepted lines of a batch together into facts; the lines of a fact are always in one batch. */
export function settingsFacts(rows: readonly Line[]): readonly ImportedSettings[] {
  const facts = new Map<string, Line[]>();
  for (const row of rows) {
    const { property, controller, effectiveAt } = row.values;
    const key = JSON.stringify([property, controller, effectiveAt]);
    facts.set(key, [...(facts.get(key) ?? []), row]);
  }
  return [...facts.values()].map(factOf);
}

function factOf(lines: readonly Line[]): ImportedSettings {
  const { property, controller, effectiveAt, record, state } = (lines[0] as Line).values;
  const programs = new Map<string, Line[]>();
  for (const line of lines) {
    const name = line.values.program ?? '';
    programs.set(name, [...(programs.get(name) ?? []), line]);
  }
  const byProgram = [...programs.values()];
  const typed = { lines: byProgram.flat().map((line) => line.typed) };
  return { property, controller, effectiveAt, record, state, programs: state === 'on' ? byProgram.map(programOf) : [], typed };
}

function programOf(lines: readonly Line[]): Program {
  const { program, days, starts, adjustPercent } = (lines[0] as Line).values;
  return { name: program ?? '', days: days ?? { kind: 'daily' }, starts: starts ?? [], adjustPercent, stations: lines.map(runOf) };
}

function runOf({ values }: Line): StationRun {
  return { station: values.station ?? 0, minutes: values.minutes ?? 0, cycles: values.cycles, soakMinutes: values.soakMinutes };
}

/** The lines of a fact, to be written: one per program and station, or one alone for a state other than on. */
export function settingsLines(fact: ImportedSettings, timeZone: string): readonly WritableRow<'settings'>[] {
  const lines = linesOf(fact);
  // Lines that were typed for other settings would be compared cell by cell in vain.
  const typed = fact.typed.lines.length === lines.length ? fact.typed.lines : [];
  return lines.map((values, at) => ({ values, typed: typed[at] ?? {}, timeZone }));
}

function linesOf({ property, controller, effectiveAt, record, state, programs }: ImportedSettings): readonly ImportedValues['settings'][] {
  const alike = { property, controller, effectiveAt, record, state };
  if (state !== 'on')
    return [
      { ...alike, program: null, days: null, starts: null, adjustPercent: 100, station: null, minutes: null, cycles: 1, soakMinutes: 0 },
    ];
  return programs.flatMap(({ name, days, starts, adjustPercent, stations }) =>
    stations.map((run) => ({ ...alike, program: name, days, starts, adjustPercent, ...run })),
  );
}
