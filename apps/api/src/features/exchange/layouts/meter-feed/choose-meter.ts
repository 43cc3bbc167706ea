import { nameKey } from '../../columns/text-cells.js';
import type { KnownMeter } from '../../drafts/known.js';
import type { Names } from '../../drafts/names.js';
import type { FileMeaning, TableFile } from '../../files/table-file.js';
import { type Problem, problemAt } from '../../problems/problem.js';

/** Whose water a feed counts, or why that is not known. */
export interface MeterChoice {
  readonly meter: KnownMeter | null;
  readonly problem: Problem | null;
}

/** The meter that was named; else the only one of the property that was named, or of all. */
export function chooseMeter({ name, meaning }: TableFile, names: Names): MeterChoice {
  const at = { file: name, line: null };
  const { property = null, meter = null } = keysOf(meaning);
  if (property !== null && !names.properties.has(property))
    return { meter: null, problem: problemAt(at, 'UNKNOWN_NAME', { column: 'property', found: property, expected: '(properties.csv)' }) };
  const all = names.meter.all(property);
  const fitting = meter === null ? all : all.filter((one) => nameKey(one.meter) === meter);
  const [only] = fitting;
  if (only && fitting.length === 1) return { meter: only, problem: null };
  if (meter === null || only) return { meter: null, problem: problemAt(at, 'METER_NOT_CHOSEN') };
  return { meter: null, problem: problemAt(at, 'UNKNOWN_NAME', { column: 'meter', found: meter, expected: '(meters.csv)' }) };
}

function keysOf(meaning: FileMeaning | undefined): { property?: string; meter?: string } {
  const { property, meter } = meaning ?? {};
  return { ...(property !== undefined && { property: nameKey(property) }), ...(meter !== undefined && { meter: nameKey(meter) }) };
}
