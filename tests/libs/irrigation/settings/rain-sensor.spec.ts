import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { ControllerTraits } from '@rillbook/irrigation/settings/controller-traits.js';
import type { ControllerReplay } from '@rillbook/irrigation/settings/replay/replay-controller.js';
import { replayWithSensor } from '@rillbook/irrigation/settings/replay/replay-with-sensor.js';
import { describe, expect, it } from 'vitest';
import { anyTimer, left, program, replayOf, stationRun } from './a-replay.js';

const FIRST_DAY = dayNumberOfDate('2026-06-01');
const minutes = (replay: ControllerReplay) => replay.stations.get(1)?.minutes ?? [];
const facts = [left([program()])];
/** Rain of 31 May and then of June's first days; dry before. */
const replay = (traits: Partial<ControllerTraits>, rainMm: readonly number[], settings = facts) =>
  replayWithSensor(replayOf(settings, { days: rainMm.length - 1, traits: { ...anyTimer, ...traits } }), {
    firstDay: FIRST_DAY - 3,
    rainMm: [0, 0, ...rainMm],
  });
const DRY_BEFORE = 0;
const NOT_KNOWN = Number.NaN;

describe('a rain sensor of known threshold', () => {
  const sensor = { rainSensor: true, rainSensorMm: 6 };

  it.each([
    ['less rain than the threshold', [DRY_BEFORE, 5, 0, 0], [10, 10, 10]],
    ['the threshold: that day and the next are without starts', [DRY_BEFORE, 6, 0, 0, 0], [0, 0, 10, 10]],
    ['two days that reach it together: the second is wet', [DRY_BEFORE, 4, 3, 0, 0], [10, 0, 10, 10]],
    ['rain before the first day', [20, 0, 0], [0, 10]],
    ['rain day after day', [DRY_BEFORE, 9, 9, 9, 0, 0], [0, 0, 0, 0, 10]],
  ])('%s', (_, rain, expected) => {
    const found = replay(sensor, rain);
    expect(minutes(found.most)).toEqual(expected);
    expect(found.least).toBe(found.most);
    expect(minutes(found.withoutSensor)).toEqual(expected.map(() => 10));
  });

  it('does not end a run that began before midnight', () => {
    const late = [left([program({ starts: [1410], stations: [stationRun(1, 60)] })])];
    // 31 May dry: 23:30 to 00:30. 1 June wet: no start.
    expect(minutes(replay(sensor, [0, 6, 0], late).most)).toEqual([30, 0]);
  });

  it('set to nothing stops at any rain, and never without rain', () => {
    expect(minutes(replay({ rainSensor: true, rainSensorMm: 0 }, [0, 0, 0.2, 0, 0]).most)).toEqual([10, 0, 0, 10]);
  });

  it('is there where its threshold is on record and nobody says that it is not', () => {
    const wet = [0, 9];
    expect(minutes(replay({ rainSensor: null, rainSensorMm: 6 }, wet).most)).toEqual([0]);
    expect(minutes(replay({ rainSensor: false, rainSensorMm: 6 }, wet).most)).toEqual([10]);
    expect(minutes(replay({ rainSensor: null, rainSensorMm: null }, wet).most)).toEqual([10]);
  });

  it('runs on a day of unknown rain, and says what it would have run without', () => {
    // Rain unknown on 2 June leaves the 2nd and the 3rd unsure.
    const found = replay(sensor, [0, 0, NOT_KNOWN, 0, 0]);
    expect(minutes(found.most)).toEqual([10, 10, 10, 10]);
    expect(minutes(found.unsure)).toEqual([10, 0, 0, 10]);
  });
});

describe('a rain sensor of unknown threshold', () => {
  const sensor = { rainSensor: true, rainSensorMm: null };

  it('may have stopped every start with an eighth of an inch, 3.2 mm, or none', () => {
    const found = replay(sensor, [DRY_BEFORE, 3, 0, 4, 0, 0]);
    expect(minutes(found.most)).toEqual([10, 10, 10, 10, 10]);
    expect(minutes(found.least)).toEqual([10, 10, 0, 0, 10]);
  });

  it('makes no difference in a dry month', () => {
    const found = replay(sensor, [0, 0, 0, 1]);
    expect(found.least).toBe(found.most);
    expect(found.unsure).toBe(found.most);
  });
});

describe('no sensor', () => {
  it('takes every start, whatever the rain', () => {
    const found = replay({ rainSensor: false }, [30, 30, 30]);
    expect(minutes(found.most)).toEqual([10, 10]);
    expect(found.least).toBe(found.withoutSensor);
  });
});
