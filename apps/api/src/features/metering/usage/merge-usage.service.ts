import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import type { VolumeUnit } from '@rillbook/units/volume.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import type { MergeCounts } from '../../../platform/records/merge-counts.js';
import { type DayFeed, type IncomingInterval, layOver, leastLPerMin, totalLitres } from './day-arrays.js';
import { LocalDays } from './local-days.js';
import { usageDays } from './usage-day.repository.js';

/** A volume between two instants, as a feed or a file tells it. */
export interface UsageRow {
  readonly meterId: string;
  readonly start: Date;
  readonly end: Date;
  readonly volume: number;
  readonly unit: VolumeUnit;
}

interface Day {
  readonly meterId: string;
  readonly day: string;
  readonly startsAt: number;
  readonly seconds: number;
  readonly incoming: IncomingInterval[];
}

const MS_PER_SECOND = 1000;
const keyOf = ({ meterId, day }: { readonly meterId: string; readonly day: string }): string => `${meterId} ${day}`;

/** Merges intervals into the meters' days, in a few statements however many they are; the same again changes nothing. */
export async function mergeUsage(tx: OrganizationTransaction, rows: readonly UsageRow[]): Promise<MergeCounts> {
  const counts = { created: 0, changed: 0, same: 0 };
  if (!rows.length) return counts;
  const days = intoDays(rows, await usageDays.holdMeters(tx, [...new Set(rows.map(({ meterId }) => meterId))]));
  const kept = new Map((await usageDays.ofDays(tx, days)).map((row) => [keyOf(row), row]));
  const renewed = [];
  for (const day of days) {
    const before = kept.get(keyOf(day));
    const { feed, ...became } = layOver(before ? feedOf(before) : null, day.incoming);
    counts.created += became.created;
    counts.changed += became.changed;
    counts.same += became.same;
    if (became.created + became.changed > 0) renewed.push(rowOf(day, feed));
  }
  await usageDays.put(tx, renewed);
  return counts;
}

/** Each interval goes to the local day in which it starts. */
function intoDays(rows: readonly UsageRow[], zones: ReadonlyMap<string, string>): Day[] {
  const calendars = new Map([...new Set(zones.values())].map((zone) => [zone, new LocalDays(zone)]));
  const days = new Map<string, Day>();
  for (const { meterId, start, end, volume, unit } of rows) {
    const zone = zones.get(meterId);
    if (!zone) throw platformProblems.notFound({ thing: 'meter', id: meterId });
    const calendar = calendars.get(zone)!;
    const number = calendar.dayOf(start.getTime());
    const key = `${meterId} ${number}`;
    let day = days.get(key);
    if (!day) {
      const startsAt = calendar.startOf(number);
      day = {
        meterId,
        day: dateOfDayNumber(number),
        startsAt,
        seconds: (calendar.startOf(number + 1) - startsAt) / MS_PER_SECOND,
        incoming: [],
      };
      days.set(key, day);
    }
    day.incoming.push({ start: secondsBetween(day.startsAt, start), length: secondsBetween(start.getTime(), end), volume, unit });
  }
  return [...days.values()];
}

function secondsBetween(from: number, until: Date): number {
  const seconds = (until.getTime() - from) / MS_PER_SECOND;
  if (!Number.isInteger(seconds) || seconds < 0)
    throw platformProblems.valueRefused({ field: 'usage', found: until.toISOString(), expected: 'whole seconds, the end after the start' });
  return seconds;
}

const feedOf = (row: { unit: VolumeUnit; startSeconds: number[]; lengthSeconds: number[]; volumes: number[] }): DayFeed => ({
  unit: row.unit,
  intervals: row.startSeconds.map((start, at) => ({ start, length: row.lengthSeconds[at]!, volume: row.volumes[at]! })),
});

const rowOf = ({ meterId, day, startsAt, seconds }: Day, feed: DayFeed) => ({
  meterId,
  day,
  dayStart: new Date(startsAt),
  startSeconds: feed.intervals.map(({ start }) => start),
  lengthSeconds: feed.intervals.map(({ length }) => length),
  volumes: feed.intervals.map(({ volume }) => volume),
  unit: feed.unit,
  totalL: totalLitres(feed),
  leastLPerMin: leastLPerMin(feed, seconds),
});
