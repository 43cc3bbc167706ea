import type { Sighting } from '@rillbook/metering/detection/hourly/episode-of-sighting.js';
import { becomesSteady, followUnexplained, noUnexplainedUse } from '@rillbook/metering/detection/hourly/leaks/unexplained-use.js';
import type { DayKind } from '@rillbook/metering/detection/hourly/steps/observed-meter.js';
import { describe, expect, it } from 'vitest';
import { HOURS, handMeter, MINUTES } from './hand-meter.js';

const MONTH = 365.25 / 12;
/** A usual day of 1,000 L: a tenth of it is worth telling, and a day at rest is known to 2 % of it. */
const USE = { highest: 1000, litres: 0, days: 0, ofLate: 1000, ofYear: Number.POSITIVE_INFINITY };
const SD = 20;

/** Days at rest of a meter without zones, on which so much passes, alike in every hour; on none of them does water pass in one piece. */
function followed(litresOf: (day: number) => number, days = 40, kindOf: (day: number) => DayKind = () => 'at rest') {
  const meter = handMeter({ days, litres: (day) => litresOf(day) / HOURS });
  meter.kinds.push(...Array.from({ length: days }, (_, day) => kindOf(day)));
  const unexplained = noUnexplainedUse(days);
  for (let day = 0; day < days; day++) followUnexplained(meter, unexplained, day, USE);
  return unexplained;
}
const from = (first: number, until: number, litres: number) => (day: number) => (day >= first && day < until ? litres : 0);
const openedOn = (...of: Parameters<typeof followed>) => followed(...of).told.map(({ openedMinute }) => openedMinute / MINUTES - 1);

describe('litres that nothing explains', () => {
  it('are told on the second day in a row, with their mean, and are over after two days without', () => {
    const { told } = followed(from(12, 20, 120));
    expect(told).toHaveLength(1);
    expect(told[0]).toMatchObject({
      kind: 'unexplained use',
      fromMinute: 12 * MINUTES,
      openedMinute: 14 * MINUTES,
      clearedMinute: 22 * MINUTES,
    });
    expect(told[0]?.litres).toBeCloseTo(120 * MONTH, 6);
    expect(told[0]?.details).toMatchObject({ usualLitresPerDay: 1000, lookAt: 'main, valves and runs not on record' });
    expect(told[0]?.details['shareOfUsual']).toBeCloseTo(0.12, 9);
    // As long as they last what was usual before is not forgotten.
    const { told: lasting, open } = followed(from(12, 100, 120), 100);
    expect(lasting).toHaveLength(1);
    expect(open?.litres).toBeCloseTo(120 * MONTH, 6);
  });

  it('are known on the day that tells them to what a day is known to, over the root of the days', () => {
    const { told } = followed(from(12, 20, 120), 14);
    expect(told[0]?.sdLitres).toBeCloseTo((SD / Math.SQRT2) * MONTH, 6);
    expect(told[0]?.confidence).toBeGreaterThan(0.999_999);
  });

  it('are not told below a tenth of a usual day, nor on one day, nor before six days are known', () => {
    expect(openedOn(from(12, 40, 95))).toEqual([]);
    expect(openedOn(from(12, 40, 105))).toEqual([13]);
    expect(openedOn(from(12, 13, 900))).toEqual([]);
    expect(openedOn(from(7, 40, 120))).toEqual([10]);
  });

  it('are told on the third of days that are apart', () => {
    const on = (...days: readonly number[]) => openedOn((day) => (days.includes(day) ? 300 : 0));
    expect(on(12, 14)).toEqual([]);
    expect(on(12, 14, 16)).toEqual([16]);
    // What was long ago is forgotten: each day at rest takes one of four.
    expect(on(12, 17, 22, 27)).toEqual([]);
  });

  it('are told at once where they are as much as a whole usual day', () => {
    expect(openedOn(from(12, 13, 999))).toEqual([]);
    expect(openedOn(from(12, 13, 1001))).toEqual([12]);
  });

  it('are not followed on days that are not known, or whose runs passed nothing', () => {
    const odd = (kind: DayKind) => openedOn(from(12, 14, 120), 40, (day) => (day === 13 ? kind : 'at rest'));
    expect(odd('at rest')).toEqual([13]);
    expect(odd('not known')).toEqual([]);
    expect(odd('skipped')).toEqual([]);
  });

  it('are handed over to the steady flow that they were the beginning of, and not to a later one', () => {
    const steady = (fromDay: number) => ({ fromMinute: fromDay * MINUTES, openedMinute: 16 * MINUTES, litres: 7, sdLitres: 1 }) as Sighting;
    const [same, later] = [followed(from(12, 20, 120), 15), followed(from(12, 20, 120), 15)];
    becomesSteady(same, steady(15));
    expect(same.open).toBeNull();
    expect(same.told[0]).toMatchObject({ litres: 7, sdLitres: 1, clearedMinute: 16 * MINUTES });
    expect([same.sum, same.excessDays, same.inARow]).toEqual([0, 0, 0]);
    becomesSteady(later, steady(15.1));
    expect(later.told[0]?.clearedMinute).toBeNull();
    expect(later.open).not.toBeNull();
  });
});
