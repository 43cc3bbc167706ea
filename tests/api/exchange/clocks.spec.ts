import { Temporal } from 'temporal-polyfill';
import { expect, it } from 'vitest';
import { instantsOf, startOfDay, wallOf } from '../../../apps/api/src/features/exchange/drafts/zone-clock.js';
import { outcome } from './imports-in-memory.js';

const HOUR = 3_600_000;
const ZONES = [
  'America/Los_Angeles',
  'America/Denver',
  'America/Phoenix',
  'America/Chicago',
  'America/New_York',
  'America/St_Johns',
  'Pacific/Honolulu',
  'Australia/Lord_Howe',
];

// The judge is Temporal's own disambiguation ('earlier', 'later' and 'reject'), per the ECMAScript Temporal proposal.
it.each(ZONES)('knows every change of the clocks of %s from 2020 to 2030', (zone) => {
  const last = Date.UTC(2031, 0, 1);
  let change = Temporal.Instant.fromEpochMilliseconds(Date.UTC(2020, 0, 1))
    .toZonedDateTimeISO(zone)
    .getTimeZoneTransition('next');
  const walls = [Date.UTC(2024, 1, 29, 12), Date.UTC(2026, 0, 1), Date.UTC(2026, 11, 31, 23, 59)];
  for (; change && change.epochMilliseconds < last; change = change.getTimeZoneTransition('next')) {
    for (let quarter = -8; quarter <= 8; quarter += 1) walls.push(wallOf(zone, change.epochMilliseconds).wallMs + (quarter * HOUR) / 4);
  }
  for (const wall of walls) {
    const plain = Temporal.PlainDateTime.from(new Date(wall).toISOString().slice(0, 23));
    const earlier = plain.toZonedDateTime(zone, { disambiguation: 'earlier' });
    const later = plain.toZonedDateTime(zone, { disambiguation: 'later' });
    const exists = earlier.toPlainDateTime().equals(plain);
    const both = [...new Set([earlier.epochMilliseconds, later.epochMilliseconds])];
    expect(instantsOf(zone, wall), `${plain} ${zone}`).toEqual(exists ? both : []);
    if (exists) for (const instant of both) expect(wallOf(zone, instant).wallMs).toBe(wall);
  }
});

it('begins a day whose midnight the clocks skip at the instant at which they skip it', () => {
  // Chile moved its clocks from 00:00 to 01:00 on 2024-09-08 (IANA time zone database, southamerica).
  expect(startOfDay('America/Santiago', Date.UTC(2024, 8, 8))).toBe(Date.UTC(2024, 8, 8, 4));
  expect(startOfDay('America/Santiago', Date.UTC(2024, 8, 9))).toBe(Date.UTC(2024, 8, 9, 3));
});

const reading = (times: readonly string[]): string =>
  `property,meter,read_at,register\n${times.map((time, at) => `Elm,M1,${time},${at}\n`).join('')}`;

// Los Angeles falls back at 2026-11-01T09:00Z: 01:00 to 01:59 occur at 08:xxZ and at 09:xxZ (US rule: first Sunday of November).
it.each([
  ['alone, is the first', ['2026-11-01T01:30'], ['08:30']],
  ['after the hour before, is the first', ['2026-11-01T00:45', '2026-11-01T01:30'], ['07:45', '08:30']],
  ['after itself, is the second', ['2026-11-01T01:30', '2026-11-01T01:30'], ['08:30', '09:30']],
  ['after a later time of the first hour, is the second', ['2026-11-01T01:45', '2026-11-01T01:30'], ['08:45', '09:30']],
  [
    'in quarters of an hour, goes on',
    ['2026-11-01T01:00', '2026-11-01T01:30', '2026-11-01T01:00', '2026-11-01T01:30', '2026-11-01T02:00'],
    ['08:00', '08:30', '09:00', '09:30', '10:00'],
  ],
  ['after a day long past it, is the first', ['2026-11-02T00:00', '2026-11-01T01:30'], ['08:00', '08:30']],
  ['with an offset, is what the offset says', ['2026-11-01T01:30-08:00', '2026-11-01T01:45'], ['09:30', '09:45']],
])('a reading at a time that occurs twice, %s', async (_, times, utc) => {
  const found = await outcome({ 'readings.csv': reading(times) });
  expect(found.problems).toEqual([]);
  expect(found.values.readings?.map((row) => new Date(row.readAt).toISOString().slice(11, 16))).toEqual(utc);
});

it('a third reading at a time that occurs twice repeats the first', async () => {
  expect((await outcome({ 'readings.csv': reading(['2026-11-01T01:30', '2026-11-01T01:30', '2026-11-01T01:30']) })).problems).toEqual([
    'readings.csv:4:read_at DUPLICATE_ROW &2',
  ]);
});

it('readings of another meter say nothing', async () => {
  const text = `${reading(['2026-11-01T01:45'])}Oak,M1,2026-11-01T01:30,1\n`;
  const found = await outcome({ 'readings.csv': text });
  // Denver falls back an hour before Los Angeles: its first 01:30 is 07:30Z.
  expect(found.values.readings?.map((row) => new Date(row.readAt).toISOString().slice(11, 16))).toEqual(['08:45', '07:30']);
});

it('hours of usage go through the hour that occurs twice, each an hour long', async () => {
  const hours = ['00:00', '01:00', '01:00', '02:00', '03:00'];
  const rows = hours.slice(1).map((end, at) => `Elm,M1,2026-11-01T${hours[at]},2026-11-01T${end},1\n`);
  const found = await outcome({ 'usage.csv': `property,meter,start,end,volume\n${rows.join('')}` });
  expect(found.problems).toEqual([]);
  expect(found.values.usage?.map((row) => (row.end - row.start) / HOUR)).toEqual([1, 1, 1, 1]);
});

it.each([
  ['2026-03-08T01:59', []],
  ['2026-03-08T02:00', ['readings.csv:2:read_at TIME_DOES_NOT_EXIST']],
  ['2026-03-08T02:59', ['readings.csv:2:read_at TIME_DOES_NOT_EXIST']],
  ['2026-03-08T03:00', []],
  ['2026-03-08T02:30-08:00', []],
])('%s in Los Angeles, on the day the clocks spring forward', async (time, problems) => {
  expect((await outcome({ 'readings.csv': reading([time]) })).problems).toEqual(problems);
});
