import { mergeReadings as merge, type ReadingToMerge } from '../../../metering/readings/merge-readings.service.js';
import type { FileMerge } from '../directory/file-merge.js';
import { isWhole, typedOver, valueOver } from './over-stored.js';
import { storedFacts } from './stored-facts.repository.js';
import { meterIdOf, touchMeters } from './places.js';

/** readings.csv */
export const mergeReadings: FileMerge<'readings'> = async (to, { columns, rows }) => {
  const told = rows.map(({ values, typed }): ReadingToMerge => {
    const { readAt, register, source, note } = values;
    return { meterId: meterIdOf(to, values), readAt: new Date(readAt), register, source, note, typed };
  });
  const merged = await merge(to.tx, isWhole('readings', columns) ? told : await overStored(told));
  if (merged.created + merged.changed) touchMeters(to, told);
  return merged;

  async function overStored(readings: readonly ReadingToMerge[]): Promise<ReadingToMerge[]> {
    const places = readings.map(({ meterId, readAt }) => ({ owner: meterId, key: readAt }));
    const before = await storedFacts.notes(to.tx, places);
    return readings.map((reading, at) => ({
      ...reading,
      note: valueOver(before[at] ?? null, reading.note, columns.has('note')),
      typed: typedOver(before[at] ?? null, reading.typed, columns),
    }));
  }
};
