import { type Opening, pressureExponent } from '@rillbook/irrigation/hardware/flow/flow-at-pressure.js';
import { displacementMeterFlows } from '@rillbook/metering/meter-limits/displacement-meter.js';
import { paceOfMeter, registrationError, registrationLimits, type TestFlow } from '@rillbook/metering/meter-limits/registration.js';
import {
  ACTIVE_SHARE,
  backgroundLossOfMains,
  LITRES_PER_CISTERN,
  legitimateNightUse,
  nightWindow,
} from '@rillbook/metering/night-flow/minimum-night-flow.js';
import { gallonsPerMinuteFromLitresPerMinute } from '@rillbook/units/flow.js';
import { metres, millimetresFromInches } from '@rillbook/units/length.js';
import { expect, it } from 'vitest';
import { expectGolden, type GoldenCheck, type GoldenValue } from '../golden-check.js';
import { checks } from './values.js';

type Computed = Readonly<Record<string, GoldenValue>>;

/** Conversions there and back leave floating-point dust behind the twelfth digit. */
const dusted = (value: number) => Number(value.toPrecision(12));
/** Inches of a size as it is printed: '1-1/2 in'. */
const inchesOf = (printed: string) =>
  printed
    .replace(' in', '')
    .split('-')
    .map((part) => part.split('/').map(Number) as [number, number?])
    .reduce((sum, [above, below]) => sum + above / (below ?? 1), 0);

const testFlows = (check: GoldenCheck): Computed => {
  const flows = displacementMeterFlows(millimetresFromInches(inchesOf(String(check.inputs['meter_size']?.[0]))));
  expect(flows).not.toBeNull();
  if (!flows) return {};
  return {
    min_test_flow: dusted(gallonsPerMinuteFromLitresPerMinute(flows.minimumTestFlow)),
    max_normal_flow: dusted(gallonsPerMinuteFromLitresPerMinute(flows.maximumNormalFlow)),
  };
};
const band = (flow: TestFlow) => {
  const { from, to } = registrationLimits(flow);
  return `${dusted(100 * from)}-${dusted(100 * to)} %`;
};
const clock = (minute: number) => `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
const exponent = (opening: Opening) => pressureExponent[opening];

const computed: Readonly<Record<keyof typeof checks, (check: GoldenCheck) => Computed>> = {
  'ml-017': () => {
    expect(band('intermediate')).toBe(band('maximum'));
    return { limits: `${band('maximum')} | ${band('minimum')}` };
  },
  'ml-021': testFlows,
  'ml-022': testFlows,
  'ml-024': testFlows,
  'ml-025': testFlows,
  'ml-030': () => {
    // The base is the meter: 100 registered of 98 true is an error of 2, not of 2.04.
    expect(registrationError(100, 98)).toBe(2);
    expect(paceOfMeter(registrationError(98, 100))).toBe('slow');
    return { positive_means: paceOfMeter(registrationError(100, 98)) };
  },
  'ml-031': () => {
    // By the published figures: of a thousand people 60 empty a cistern of 10 L once in the hour.
    expect(legitimateNightUse(1000)).toBeCloseTo(600, 9);
    return {
      window: `${clock(nightWindow.fromMinute)}-${clock(nightWindow.untilMinute)}`,
      active_population: dusted(100 * ACTIVE_SHARE),
      mains_background: backgroundLossOfMains(metres(1000)),
      cistern: LITRES_PER_CISTERN,
      pressure_exponent_background: exponent('background leaks'),
      pressure_exponent_bursts: exponent('burst'),
    };
  },
  'displacement-meter-5-8': testFlows,
  'displacement-meter-1-1-2': testFlows,
  'displacement-meter-4': testFlows,
  'displacement-meter-6': testFlows,
};

it.each(Object.entries(computed))('%s', (id, compute) => {
  const check: GoldenCheck = checks[id as keyof typeof checks];
  expectGolden(check, compute(check));
});
