import { litresFrom, type VolumeUnit } from '@rillbook/units/volume.js';
import { daysAfter, wallText } from '../columns/time-cells.js';
import type { DraftRow } from '../drafts/draft-row.js';
import type { FileCheck } from './file-check.js';
import { keyOf } from '../drafts/key-table.js';
import type { KnownMeter } from '../drafts/known.js';
import type { Names } from '../drafts/names.js';
import { IntervalClock, placeInstant, ReadingClock } from '../drafts/place-instants.js';
import { referController, referMeter, referStation, type Referred } from '../drafts/refer.js';
import { keyPart, sameKeyCheck } from '../drafts/same-key.js';
import { Spans } from '../drafts/spans.js';
import { wallOf } from '../drafts/zone-clock.js';

/** Without its meter or controller a local time has no zone: the row is rejected already, and its instants are left out. */
function unplace(row: DraftRow, ...fields: readonly string[]): void {
  for (const field of fields) delete row.values[field];
}

export function readingsCheck(names: Names): FileCheck {
  const sameKey = sameKeyCheck('property', 'meter', 'read_at');
  const clock = new ReadingClock();
  return (row) => {
    const meter = referMeter(row, names);
    if (!meter) return unplace(row, 'readAt');
    const key = keyOf(meter.property, row.text('meter'));
    const readAt = placeInstant(row, 'readAt', 'read_at', names.zoneOf(meter.property), clock.chooseFor(key));
    if (readAt === null) return;
    clock.advance(key, readAt);
    sameKey(row, [key, readAt]);
  };
}

export function usageCheck(names: Names): FileCheck {
  const sameKey = sameKeyCheck('property', 'meter', 'start');
  const clock = new IntervalClock();
  const spans = new Spans();
  return (row) => {
    const meter = referMeter(row, names);
    if (!meter) return unplace(row, 'start', 'end');
    addLitres(row, meter);
    const zone = names.zoneOf(meter.property);
    const key = keyOf(meter.property, row.text('meter'));
    const start = placeInstant(row, 'start', 'start', zone, clock.chooseStart(key));
    const end = placeInstant(row, 'end', 'end', zone, clock.chooseEnd(start));
    if (start === null || end === null) return;
    clock.advance(key, end);
    const before = row.problems.length;
    sameKey(row, [key, start]);
    if (end <= start) row.refuse('END_NOT_AFTER_START', { column: 'end', found: row.found('end'), expected: row.found('start') });
    else if (row.problems.length === before) overlapCheck(row, spans, key, zone);
  };
}

function overlapCheck(row: DraftRow, spans: Spans, key: string, zone: string): void {
  const overlap = spans.add(key, row.number('start') ?? 0, row.number('end') ?? 0, row.line);
  if (!overlap) return;
  const expected = `${wallText(wallOf(zone, overlap.start).wallMs)} – ${wallText(wallOf(zone, overlap.end).wallMs)}`;
  row.refuse('USAGE_OVERLAPS', { column: 'start', found: row.found('start'), expected, otherLine: overlap.line });
}

/** A volume in the unit that the row gives, or else in the meter's. */
function addLitres(row: DraftRow, meter: Referred<KnownMeter>): void {
  const volume = row.number('volume');
  const unit = row.values['unit'] === null ? meter.thing.unit : (row.text('unit') as VolumeUnit | null);
  if (volume === null || unit === null) return;
  row.values['litres'] = litresFrom(volume, unit);
  row.values['volumeUnit'] = unit;
}

const MS_PER_DAY = 86_400_000;

export function billsCheck(names: Names): FileCheck {
  const sameKey = sameKeyCheck('property', 'meter', 'start');
  const spans = new Spans();
  return (row) => {
    const meter = referMeter(row, names);
    if (meter) addLitres(row, meter);
    const days = billedDays(row);
    if (!meter || !days) return;
    const key = keyOf(meter.property, row.text('meter'));
    sameKey(row, [key, days.startOn]);
    if (!row.rejected) billOverlapCheck(row, spans, key, days);
  };
}

interface BilledDays {
  readonly startOn: string;
  /** The first day not billed. */
  readonly endOn: string;
}

function billedDays(row: DraftRow): BilledDays | null {
  const [startOn, end] = [row.text('startOn'), row.text('end')];
  if (startOn === null || end === null) return null;
  const endOn = row.values['endIncluded'] === true ? daysAfter(end, 1) : end;
  row.values['endOn'] = endOn;
  if (endOn <= startOn) row.refuse('END_NOT_AFTER_START', { column: 'end', found: end, expected: startOn });
  return { startOn, endOn };
}

function billOverlapCheck(row: DraftRow, spans: Spans, key: string, { startOn, endOn }: BilledDays): void {
  const overlap = spans.add(key, dayNumber(startOn), dayNumber(endOn), row.line);
  if (!overlap) return;
  const expected = `${dayText(overlap.start)} – ${dayText(overlap.end)}`;
  row.warn('BILLS_OVERLAP', { column: 'start', found: startOn, expected, otherLine: overlap.line });
}

function dayNumber(day: string): number {
  return Date.parse(`${day}T00:00:00Z`) / MS_PER_DAY;
}

function dayText(day: number): string {
  return new Date(day * MS_PER_DAY).toISOString().slice(0, 10);
}

export function pausesCheck(names: Names): FileCheck {
  const sameKey = sameKeyCheck('property', 'controller', 'paused_from');
  return (row) => {
    const controller = referController(row, names);
    if (!controller) return unplace(row, 'pausedFrom', 'pausedUntil');
    const zone = names.zoneOf(controller.property);
    const from = placeInstant(row, 'pausedFrom', 'paused_from', zone);
    const until = placeInstant(row, 'pausedUntil', 'paused_until', zone, (first, second) =>
      from !== null && first <= from ? second : first,
    );
    if (from !== null) sameKey(row, [controller.property, keyPart(row.text('controller')), from]);
    if (from !== null && until !== null && until <= from)
      row.refuse('END_NOT_AFTER_START', { column: 'paused_until', found: row.found('paused_until'), expected: row.found('paused_from') });
  };
}

export function weatherCheck(names: Names): FileCheck {
  const sameKey = sameKeyCheck('station', 'date');
  return (row) => {
    referStation(row, names);
    sameKey(row, [keyPart(row.text('station')), keyPart(row.text('day'))]);
    lowestNotAboveHighest(row, ['tminC', 'tmin_f'], ['tmaxC', 'tmax_f']);
    lowestNotAboveHighest(row, ['rhMinPercent', 'rhmin'], ['rhMaxPercent', 'rhmax']);
  };
}

function lowestNotAboveHighest(row: DraftRow, lowest: readonly [string, string], highest: readonly [string, string]): void {
  const [low, high] = [row.number(lowest[0]), row.number(highest[0])];
  if (low !== null && high !== null && low > high)
    row.refuse('MIN_ABOVE_MAX', { column: lowest[1], found: row.found(lowest[1]), expected: row.found(highest[1]) });
}
