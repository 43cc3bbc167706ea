import type { DraftRow } from '../drafts/draft-row.js';
import type { FileCheck, GroupCheck } from './file-check.js';
import { keyOf } from '../drafts/key-table.js';
import type { KnownController } from '../drafts/known.js';
import { mustAgree } from './must-agree.js';
import type { Names } from '../drafts/names.js';
import { placeInstant } from '../drafts/place-instants.js';
import { referController } from '../drafts/refer.js';
import { sameKeyCheck } from '../drafts/same-key.js';

/** The cells that only a controller in state `on` has: field and column. */
const PROGRAM_CELLS = [
  ['program', 'program'],
  ['days', 'days'],
  ['starts', 'starts'],
  ['adjustPercent', 'adjust_percent'],
  ['station', 'station'],
  ['minutes', 'minutes'],
  ['cycles', 'cycles'],
  ['soakMinutes', 'soak_min'],
] as const;
/** Those without which a line of a running program says nothing. */
const NEEDED_WHEN_ON: readonly string[] = ['program', 'days', 'starts', 'station', 'minutes'];

/** The lines of one controller and instant are one settings fact. */
export function settingsCheck(names: Names): FileCheck {
  const sameKey = sameKeyCheck('property', 'controller', 'effective_at', 'program', 'station');
  return (row) => {
    const controller = referController(row, names);
    if (!controller) {
      delete row.values['effectiveAt'];
      return;
    }
    const effectiveAt = placeInstant(row, 'effectiveAt', 'effective_at', names.zoneOf(controller.property));
    stateCheck(row);
    capacityCheck(row, controller.thing);
    if (effectiveAt === null) return;
    row.group = keyOf(controller.property, row.text('controller'), effectiveAt);
    const [program, station] = [row.text('program'), row.number('station')];
    if (row.values['state'] === 'on' && program !== null && station !== null) sameKey(row, [row.group, program, station]);
  };
}

function stateCheck(row: DraftRow): void {
  const state = row.text('state');
  if (state === null) return;
  for (const [field, column] of PROGRAM_CELLS) {
    if (state !== 'on' && row.found(column) !== '') row.refuse('SETTINGS_NOT_BLANK', { column, found: row.found(column) });
    if (state === 'on' && NEEDED_WHEN_ON.includes(field) && row.blank(field)) row.refuse('MISSING_VALUE', { column });
  }
}

/** A station that is not there is an error; more starts, minutes or percent than the controller is recorded to hold may be the record's fault. */
function capacityCheck(row: DraftRow, controller: KnownController): void {
  const [station, starts] = [row.number('station'), row.values['starts']];
  if (station !== null && station > controller.stations)
    row.refuse('STATION_BEYOND_CONTROLLER', { column: 'station', found: String(station), expected: String(controller.stations) });
  warnAbove(row, 'minutes', 'minutes', controller.maxMinutes);
  warnAbove(row, 'adjustPercent', 'adjust_percent', controller.maxAdjustPercent);
  if (Array.isArray(starts) && controller.startsPerProgram !== null && starts.length > controller.startsPerProgram) {
    row.warn('BEYOND_CONTROLLER', { column: 'starts', found: row.found('starts'), expected: String(controller.startsPerProgram) });
  }
}

function warnAbove(row: DraftRow, field: 'minutes' | 'adjustPercent', column: string, most: number | null): void {
  const value = row.number(field);
  if (value !== null && most !== null && value > most)
    row.warn('BEYOND_CONTROLLER', { column, found: row.found(column), expected: String(most) });
}

/** What must be alike on all lines of a fact, and on all lines of one of its programs. */
export function settingsFactCheck(names: Names): GroupCheck {
  return (rows) => {
    const first = rows[0];
    if (!first) return;
    mustAgree(rows, 'record', 'record');
    mustAgree(rows, 'state', 'state');
    if (first.text('state') !== 'on') oneLineOnly(rows);
    const controller = names.controller.get(first.text('property') ?? '', first.text('controller') ?? '');
    if (controller?.adjustScope === 'controller') mustAgree(rows, 'adjustPercent', 'adjust_percent');
    for (const lines of byProgram(rows)) {
      mustAgree(lines, 'days', 'days');
      mustAgree(lines, 'starts', 'starts');
      if (controller?.adjustScope !== 'controller') mustAgree(lines, 'adjustPercent', 'adjust_percent');
    }
  };
}

function oneLineOnly(rows: readonly DraftRow[]): void {
  const otherLine = rows[0]?.line ?? null;
  for (const row of rows.slice(1))
    if (row.text('state') !== 'on') row.refuse('STATE_HAS_ONE_LINE', { column: 'state', found: row.found('state'), otherLine });
}

function byProgram(rows: readonly DraftRow[]): readonly (readonly DraftRow[])[] {
  const programs = new Map<string, DraftRow[]>();
  for (const row of rows) {
    const program = row.text('program');
    if (program === null) continue;
    programs.set(program, [...(programs.get(program) ?? []), row]);
  }
  return [...programs.values()];
}
