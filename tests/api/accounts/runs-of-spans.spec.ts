import type { AccountController, AccountZone } from '@rillbook/metering/account/account-input.js';
import { describe, expect, it } from 'vitest';
import { propertyCalendar } from '../../../apps/api/src/features/accounts/evidence/property-calendar.js';
import { replayedController } from '../../../apps/api/src/features/accounts/evidence/replayed-controller.js';
import { runsOfSpans } from '../../../apps/api/src/features/accounts/evidence/runs-of-spans.js';

// 2026-06-01, a Monday.
const FIRST = 20605;
const DAYS = 28;
const calendar = propertyCalendar('America/Los_Angeles', { firstDay: FIRST, days: DAYS });
const station = (number: number, minutes: number) => ({ station: number, minutes, cycles: 3, soakMinutes: 30 });

// Program B of the evening reaches past midnight, so that A of the next morning waits.
const controller = {
  id: 'c1',
  pauses: [],
  traits: { runsAtOnce: 1, rainSensor: false, rainSensorMm: null, minuteStep: null, maxMinutes: null, monthlyAdjustPercent: null },
  facts: [
    {
      effectiveAt: '2026-05-01T08:00',
      record: 'left',
      state: 'on',
      programs: [
        { name: 'A', days: { kind: 'daily' }, starts: [60], adjustPercent: 100, stations: [station(1, 60), station(2, 60)] },
        { name: 'B', days: { kind: 'daily' }, starts: [1260], adjustPercent: 100, stations: [station(3, 150), station(4, 150)] },
      ],
    },
  ],
} as unknown as AccountController;
const zones = [1, 2, 3, 4].map((number) => ({ id: `z${number}`, controllerId: 'c1', station: number })) as unknown as AccountZone[];
const replayed = replayedController(controller, calendar, { firstDay: FIRST, rainMm: new Float64Array(DAYS) } as never);

describe('the runs of a meter with an hourly feed that is read as well', () => {
  const fed = { firstDay: FIRST, days: DAYS };
  const readOn = [4, 11, 12, 20].map((day) => ({ firstDay: FIRST + day, days: 1 }));
  const runs = runsOfSpans([replayed], zones, [fed, ...readOn], calendar);

  it('are those of the feed alone: a reading opens no valve a second time', () => {
    expect(runs).toEqual(runsOfSpans([replayed], zones, [fed], calendar));
    expect(runs.length).toBeGreaterThan(DAYS * 4 * 3 - 12);
  });

  it('hold each valve open once at a time, as long in all as the replay says', () => {
    for (const { id, station: number } of zones) {
      const own = runs.filter(({ zoneId }) => zoneId === id);
      own.slice(1).forEach(({ begin }, at) => expect(begin).toBeGreaterThanOrEqual(own[at]!.end));
      const inside = own.filter(({ begin }) => begin >= calendar.midnights[1]! && begin < calendar.midnights[DAYS - 1]!);
      const minutes = inside.reduce((sum, { begin, end }) => sum + end - begin, 0);
      const laid = replayed.minutesOf(number!)!.slice(1, DAYS - 1);
      expect(minutes).toBeCloseTo(
        laid.reduce((sum, own) => sum + own, 0),
        6,
      );
    }
  });

  it('of days apart are those of the days, as they are in the whole', () => {
    const two = runsOfSpans([replayed], zones, [readOn[3]!, readOn[0]!], calendar);
    const isOf = (day: number) => (run: { begin: number; end: number }) =>
      run.end > calendar.midnights[day]! && run.begin < calendar.midnights[day + 1]!;
    expect(two.filter((run) => isOf(4)(run) || isOf(20)(run))).toEqual([...runs.filter(isOf(4)), ...runs.filter(isOf(20))]);
    two.forEach((run) => expect(runs).toContainEqual(run));
  });
});
