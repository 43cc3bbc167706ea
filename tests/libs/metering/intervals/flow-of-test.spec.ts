import { flowOfTest, minutesToTell, tellsFlow } from '@rillbook/metering/intervals/flow-of-test.js';
import { gallonsPerMinuteFromLitresPerMinute } from '@rillbook/units/flow.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { expect, it } from 'vitest';

const min = (value: number) => value as Quantity<'min'>;
const gal = { unit: 'gal', multiplier: 1, digits: 6 } as const;
const ccf = { unit: 'CCF', multiplier: 1, digits: 6 } as const;

it('is the volume between two registers over the time, through the highest number too', () => {
  const { flow } = flowOfTest({ from: 999_960, to: 40 }, gal, 1, min(4));
  expect(gallonsPerMinuteFromLitresPerMinute(flow)).toBeCloseTo(20, 9);
  // 0.4 CCF are 299.22 gal (1 CCF = 748.05 gal, NIST SP 811 B.8).
  expect(gallonsPerMinuteFromLitresPerMinute(flowOfTest({ from: 18_715.9, to: 18_716.3 }, ccf, 0.1, min(15)).flow)).toBeCloseTo(19.95, 2);
});

it('says how far the register’s rounding may put it off, and how long a test would have to be', () => {
  // Two roundings to 10 gal, each uniform: sd 10 · sqrt(1/6) = 4.08 gal (JCGM 100:2008, 4.3.7).
  const short = flowOfTest({ from: 100, to: 130 }, gal, 10, min(2));
  expect(gallonsPerMinuteFromLitresPerMinute(short.sd!)).toBeCloseTo(Math.sqrt(100 / 6) / 2, 9);
  expect(tellsFlow(short)).toBe(false);
  const needed = minutesToTell(short, min(2))!;
  expect(needed).toBeCloseTo(2 * (Math.sqrt(100 / 6) / 30) * 10, 9);
  const long = flowOfTest({ from: 100, to: 100 + 15 * needed }, gal, 10, needed);
  expect(long.sd! / long.flow).toBeCloseTo(0.1, 9);
  expect(tellsFlow(flowOfTest({ from: 100, to: 145 }, gal, 10, min(3)))).toBe(true);
});

it('tells nothing where nothing ran, and believes a register of which nobody has said how finely it reads', () => {
  const still = flowOfTest({ from: 100, to: 100 }, gal, 1, min(5));
  expect([tellsFlow(still), minutesToTell(still, min(5))]).toEqual([false, null]);
  const unsaid = flowOfTest({ from: 100, to: 101 }, gal, null, min(5));
  expect([unsaid.sd, tellsFlow(unsaid), minutesToTell(unsaid, min(5))]).toEqual([null, true, null]);
});

it('refuses no time, and a register that runs backwards', () => {
  for (const wrong of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
    expect(() => flowOfTest({ from: 1, to: 2 }, gal, 1, min(wrong))).toThrow(expect.objectContaining({ code: 'FLOW_TEST_OUT_OF_DOMAIN' }));
  expect(() => flowOfTest({ from: 2, to: 1 }, { ...gal, digits: null }, 1, min(1))).toThrow(
    expect.objectContaining({ code: 'REGISTER_RUNS_BACKWARDS' }),
  );
});
