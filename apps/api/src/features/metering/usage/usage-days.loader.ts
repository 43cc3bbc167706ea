import { defineLoader } from '../../../platform/graphql/loader.js';
import type { UsageDayRow } from './usage-day.entity.js';
import { type MeterDays, usageDays } from './usage-day.repository.js';

/** As a key: `${from} ${until} ${meterId}`. */
export const meterDaysKey = ({ from, until, meterId }: MeterDays): string => `${from} ${until} ${meterId}`;

const meterDays = (key: string): MeterDays => {
  const [from, until, meterId] = key.split(' ') as [string, string, string];
  return { meterId, from, until };
};

/** What ran on the newest days of each property whose meters are all read by the hour; see the repository. */
export const newestDaysOfProperties = usageDays.newestOfProperties;

/** A meter's days of feed in a stretch of days. */
export const usageDaysBetween = defineLoader<string, Omit<UsageDayRow, 'organizationId'>[]>(async (tx, keys) => {
  const found = await usageDays.between(tx, keys.map(meterDays));
  return new Map(keys.map((key, at) => [key, found[at]!]));
}, []);
