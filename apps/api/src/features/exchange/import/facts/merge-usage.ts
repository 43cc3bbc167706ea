import { mergeUsage as merge } from '../../../metering/usage/merge-usage.service.js';
import type { FileMerge } from '../directory/file-merge.js';
import { meterIdOf, touchMeters } from './places.js';

/** usage.csv */
export const mergeUsage: FileMerge<'usage'> = async (to, { rows }) => {
  const told = rows.map(({ values }) => ({
    meterId: meterIdOf(to, values),
    start: new Date(values.start),
    end: new Date(values.end),
    volume: values.volume,
    unit: values.volumeUnit,
  }));
  const merged = await merge(to.tx, told);
  if (merged.created + merged.changed) touchMeters(to, told);
  return merged;
};
