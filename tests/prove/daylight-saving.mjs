// Hourly and 15-minute usage over every change of clocks of 2020 to 2030 in eight time zones: as instants, and as wall
// times of a file with and without offsets; merged twice, in pieces and backwards. Every row stands in its local day, no
// litre is lost or doubled, and twice is the same as once. The product's own merge runs on a table in memory; changes and
// days are found by Intl, not in the product's way. `npm run prove -- daylight-saving Australia/Lord_Howe` takes one zone.
import { isDeepStrictEqual } from 'node:util';
import { placed, IntervalClock } from '../../apps/api/dist/features/exchange/drafts/place-instants.js';
import { instant as instantCell } from '../../apps/api/dist/features/exchange/columns/time-cells.js';
import { mergeUsage } from '../../apps/api/dist/features/metering/usage/merge-usage.service.js';
import { usageDays } from '../../apps/api/dist/features/metering/usage/usage-day.repository.js';
import { meteredIntervals } from '../../apps/api/dist/features/accounts/gather/metered-intervals.js';
import { dateOfDayNumber, dayNumberOfDate } from '../../libs/irrigation/dist/calendar/local-date.js';
import { meteredDays } from '../../libs/metering/dist/intervals/metered-days.js';
import { litresFrom } from '../../libs/units/dist/volume.js';
import { changesOf, dateAt, offsetTextAt, startOfDate, wallAt } from '../support/worlds/wall-clock.mjs';

export const readsShared = false;

/** Whole and half hours from UTC; changes of an hour and of half an hour, at night and at midnight, and around a month of fasting. */
const ZONES = [
  'America/Los_Angeles',
  'America/New_York',
  'America/St_Johns',
  'America/Havana',
  'America/Santiago',
  'Europe/Berlin',
  'Africa/Casablanca',
  'Australia/Lord_Howe',
];
const [FROM, UNTIL] = [Date.UTC(2020, 0, 1), Date.UTC(2031, 0, 1)];
const MINUTE = 60_000;
const DAY = 1440 * MINUTE;
const METER = 'meter';
const ONE_METER = { id: METER, digits: null, unit: 'gal', multiplier: 1, resolution: null, installedOn: null, removedOn: null };
const NO_DEMAND = { eto: { etoOf: () => null }, litresPerMm: 0, programmedLitres: () => null };
/** Feeds by the hour and by the quarter, and one whose hours are not those of the clock. */
const FEEDS = [
  { minutes: 60, late: 0 },
  { minutes: 15, late: 0 },
  { minutes: 60, late: 20 },
];
/** A sum of a few hundred numbers rounds by less. [–] */
const ROUNDING = 1e-12;
/** Instants become day numbers in an account, which have eleven digits after the point. [–] */
const ACCOUNT_ROUNDING = 1e-9;

const count = (value) => value.toLocaleString('en-US');
const close = (a, b) => Math.abs(a - b) <= ROUNDING * Math.max(1, Math.abs(b));
const must = (what, holds) => {
  if (!holds) throw new Error(what);
};

/** The table of usage days, in memory instead of in the database. */
function inMemory(zone) {
  const rows = new Map();
  Object.assign(usageDays, {
    holdMeters: async (_, ids) => new Map(ids.map((id) => [id, zone])),
    ofDays: async (_, days) => days.map(({ day }) => rows.get(day)).filter(Boolean),
    put: async (_, days) => void days.forEach((row) => rows.set(row.day, structuredClone(row))),
  });
  return { merge: (told) => mergeUsage(null, told), days: () => [...rows.values()].sort((a, b) => a.day.localeCompare(b.day)) };
}

/** A feed without holes from two local days before a change to three after, in quarters of a gallon. */
function feedOver(zone, change, { minutes, late }) {
  const [from, until] = [-2, 3].map((days) => startOfDate(zone, dateAt(zone, change.at + days * DAY)));
  return Array.from({ length: Math.ceil((until - from) / (minutes * MINUTE)) }, (_, at) => {
    const start = from + (late + at * minutes) * MINUTE;
    return { meterId: METER, start: new Date(start), end: new Date(start + minutes * MINUTE), volume: ((at * 7) % 40) / 4, unit: 'gal' };
  });
}

/** The same feed as a file's wall times would be read, row by row. */
function readBack(zone, feed, write) {
  const clock = new IntervalClock();
  return feed.map((row) => {
    const read = (at, choose) => placed(instantCell.read(write(at.getTime())), zone, choose);
    const start = read(row.start, clock.chooseStart(METER));
    const end = read(row.end, clock.chooseEnd(start));
    clock.advance(METER, end);
    return { ...row, start: new Date(start), end: new Date(end) };
  });
}

const wallText = (zone) => (at) => new Date(wallAt(zone, at)).toISOString().slice(0, 16);

/** The days that a feed becomes must hold it whole, each interval in its own day. */
function judgeDays(zone, feed, days) {
  for (const day of days) {
    const startsAt = startOfDate(zone, day.day);
    must(`${day.day} begins at ${day.dayStart.toISOString()}`, day.dayStart.getTime() === startsAt);
    must(
      `${day.day} has an interval of another day`,
      day.startSeconds.every((seconds) => dateAt(zone, startsAt + seconds * 1000) === day.day),
    );
    must(
      `${day.day} has a wrong sum`,
      close(
        day.totalL,
        litresFrom(
          day.volumes.reduce((sum, volume) => sum + volume, 0),
          'gal',
        ),
      ),
    );
    must(`${day.day} has no least flow`, day === days[0] || day === days.at(-1) || day.leastLPerMin !== null);
  }
  const told = days.flatMap((day) =>
    day.startSeconds.map((seconds, at) => [day.dayStart.getTime() + seconds * 1000, day.lengthSeconds[at], day.volumes[at]]),
  );
  must(
    'the rows are not those that came',
    isDeepStrictEqual(
      told,
      feed.map((row) => [row.start.getTime(), (row.end - row.start) / 1000, row.volume]),
    ),
  );
}

/** How much of the feed the account misses when it apportions it to local days, and on how many days it sees a hole. */
function judgeAccount(zone, feed, days) {
  const [firstDay, lastDay] = [days[0], days.at(-1)].map(({ day }) => dayNumberOfDate(day));
  const startOf = (number) => startOfDate(zone, dateOfDayNumber(number));
  const usageDays = days.map((day) => {
    const dayNumber = dayNumberOfDate(day.day);
    return { ...day, dayNumber, daySeconds: (startOf(dayNumber + 1) - startOf(dayNumber)) / 1000 };
  });
  const { intervals } = meteredIntervals(
    { id: METER, meters: [ONE_METER] },
    { meters: [ONE_METER], readings: [], bills: [], usageDays },
    NO_DEMAND,
  );
  const sums = meteredDays(intervals, firstDay, lastDay - firstDay + 2, () => () => 1, { share: 0, run: 0 }).days;
  const found = sums.reduce((sum, { litres }) => sum + litres, 0);
  return {
    misses: Math.abs(
      found /
        litresFrom(
          feed.reduce((sum, { volume }) => sum + volume, 0),
          'gal',
        ) -
        1,
    ),
    holes: sums.slice(1, -2).filter(({ coveredShare }) => coveredShare < 1).length,
  };
}

async function judge(zone, change, kind) {
  const { minutes } = kind;
  const feed = feedOver(zone, change, kind);
  const table = inMemory(zone);
  const first = await table.merge(feed);
  must(`merged: ${JSON.stringify(first)} of ${feed.length}`, isDeepStrictEqual(first, { created: feed.length, changed: 0, same: 0 }));
  const days = structuredClone(table.days());
  judgeDays(zone, feed, days);
  const again = await table.merge(feed);
  must(`merged again: ${JSON.stringify(again)}`, isDeepStrictEqual(again, { created: 0, changed: 0, same: feed.length }));
  must('merged twice is not the same as once', isDeepStrictEqual(table.days(), days));
  const others = {
    backwards: [feed.toReversed()],
    'in pieces': [feed.filter(({ start }) => start < change.at), feed.filter(({ start }) => start >= change.at - 2 * minutes * MINUTE)],
  };
  for (const [how, pieces] of Object.entries(others)) {
    const other = inMemory(zone);
    for (const piece of pieces) await other.merge(piece);
    must(`merged ${how} is not the same`, isDeepStrictEqual(other.days(), days));
  }
  must(
    'wall times with offsets are read as other instants',
    isDeepStrictEqual(
      readBack(zone, feed, (at) => wallText(zone)(at) + offsetTextAt(zone, at)),
      feed,
    ),
  );
  const wall = isDeepStrictEqual(readBack(zone, feed, wallText(zone)), feed);
  // Where clocks go back by less than an interval, one row's wall times cannot tell whether it is long or short.
  must('wall times without offsets are read as other instants', wall || (change.shift < 0 && -change.shift < minutes * MINUTE));
  return { rows: feed.length, days: days.length, wall, ...judgeAccount(zone, feed, days) };
}

async function judgeZone(zone) {
  const changes = changesOf(zone, FROM, UNTIL);
  const sums = { changes: changes.length, feeds: 0, rows: 0, days: 0, misses: 0, holes: 0, bare: 0 };
  for (const change of changes)
    for (const kind of FEEDS) {
      const judged = await judge(zone, change, kind).catch((problem) => {
        throw new Error(
          `${zone}, every ${kind.minutes} min over ${new Date(change.at).toISOString()} (clocks moved by ${change.shift / MINUTE} min): ${problem.message}`,
        );
      });
      for (const name of ['rows', 'days', 'holes']) sums[name] += judged[name];
      sums.misses = Math.max(sums.misses, judged.misses);
      sums.bare += Number(judged.wall);
      sums.feeds += 1;
    }
  return sums;
}

export async function prove(zones) {
  const lines = [];
  const all = { changes: 0, feeds: 0, rows: 0, days: 0, holes: 0, misses: 0 };
  for (const zone of zones?.length ? zones : ZONES) {
    const sums = await judgeZone(zone);
    for (const name of ['changes', 'feeds', 'rows', 'days', 'holes']) all[name] += sums[name];
    all.misses = Math.max(all.misses, sums.misses);
    lines.push(
      `${zone}: ${sums.changes} changes, ${count(sums.rows)} rows in ${count(sums.days)} days; bare wall times exact in ${sums.bare} of ${sums.feeds} feeds; account off by ${sums.misses.toExponential(1)}, holes in ${sums.holes} days`,
    );
    must(`${zone} has no change of clocks`, sums.changes > 0);
  }
  lines.push(
    `${all.changes} changes, ${all.feeds} feeds, ${count(all.rows)} rows in ${count(all.days)} days: merged twice the same rows and sums`,
  );
  must(`${lines.join('\n')}\nthe account's days do not hold the feed whole`, all.misses <= ACCOUNT_ROUNDING && all.holes === 0);
  return lines.join('\n');
}
