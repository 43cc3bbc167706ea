import { flowAtPressure } from '@rillbook/irrigation/hardware/flow/flow-at-pressure.js';
import { orificeFlow, SMOOTH_NOZZLE } from '@rillbook/irrigation/hardware/flow/orifice-flow.js';
import { dripFlow } from '@rillbook/irrigation/hardware/leaks/dripping.js';
import { leakOfHole } from '@rillbook/irrigation/hardware/leaks/hole-leak.js';
import { flowOfDailyLoss, leakVolume } from '@rillbook/irrigation/hardware/leaks/leak-volume.js';
import { gallonsPerMinuteFromLitresPerMinute, litresPerMinuteFromGallonsPerMinute } from '@rillbook/units/flow.js';
import { millimetresFromInches } from '@rillbook/units/length.js';
import { kilopascalsFromPsi } from '@rillbook/units/pressure.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { gallonsFromLitres, litresFromGallons, volumeIn } from '@rillbook/units/volume.js';
import { expect, it } from 'vitest';
import { expectGolden, given, givenRow, type GoldenCheck, type GoldenValue } from '../golden-check.js';
import { checks } from './values.js';

type Computed = Readonly<Record<string, GoldenValue>>;

/** Days of the months and quarters that the tables mean. */
const MONTH = 30.4;
const QUARTER = 91.25;
const YEAR = 365;
/** Conversions there and back leave floating-point dust behind the twelfth digit. */
const dusted = (value: number) => Number(value.toPrecision(12));

const inches = millimetresFromInches;
const psi = kilopascalsFromPsi;
const gpm = gallonsPerMinuteFromLitresPerMinute;
const gallonsLost = (flow: Quantity<'L/min'>, days: number) => gallonsFromLitres(leakVolume(flow, days));
const aDay = (check: GoldenCheck): Computed => ({
  loss: gallonsLost(leakOfHole(inches(given(check, 'diameter')), psi(given(check, 'pressure'))), 1),
});
const nozzle = (check: GoldenCheck): Computed => ({
  flow: givenRow(check, 'pressure').map((pressure) => gpm(orificeFlow(inches(given(check, 'nozzle')), psi(pressure), SMOOTH_NOZZLE))),
});

const computed: Readonly<Record<keyof typeof checks, (check: GoldenCheck) => Computed>> = {
  'ml-010': aDay,
  'ml-011': aDay,
  'ml-013': (check) => ({
    loss: dusted(gallonsLost(flowOfDailyLoss(litresFromGallons(given(check, 'loss_per_day'))), given(check, 'days'))),
  }),
  'ml-014': (check) => ({ loss: gallonsLost(dripFlow(given(check, 'drip')).least, MONTH) }),
  'ml-016': (check) => {
    const first = litresPerMinuteFromGallonsPerMinute(given(check, 'Q1'));
    const second = flowAtPressure(first, psi(given(check, 'P1')), psi(given(check, 'P2')));
    return { Q2: gpm(second), ratio: second / first };
  },
  'ss-065': nozzle,
  'ml-050': (check) => ({
    loss: givenRow(check, 'hole').map((hole) => gallonsLost(leakOfHole(inches(hole), psi(given(check, 'P'))), MONTH)),
  }),
  'ml-051': (check) => {
    const lost = givenRow(check, 'stream').map((stream) => leakVolume(leakOfHole(inches(stream), psi(60)), QUARTER));
    return { loss: lost.map(gallonsFromLitres), loss_m3: lost.map((litres) => volumeIn(litres, 'm3')) };
  },
  'ml-053': (check) => {
    // The chart prints no pressure. The first row's flow sets it, by the square root; the other row and both days are then computed.
    const pressure = psi(60 * (0.47 / gpm(leakOfHole(inches(0.0625), psi(60)))) ** 2);
    const flows = givenRow(check, 'hole').map((hole) => leakOfHole(inches(hole), pressure));
    return { flow: flows.map(gpm), per_day: flows.map((flow) => gallonsLost(flow, 1)) };
  },
  'ml-056': (check) => ({ loss: gallonsLost(dripFlow(60 * given(check, 'drip')).most, YEAR) }),
  'quarter-inch-hole': aDay,
  'smaller-nozzle': nozzle,
  'square-root-rule': (check) => {
    const first = litresPerMinuteFromGallonsPerMinute(given(check, 'Q1'));
    return { Q2: givenRow(check, 'P2').map((pressure) => gpm(flowAtPressure(first, psi(given(check, 'P1')), psi(pressure)))) };
  },
  'orifice-constant': (check) => ({
    flow: gpm(orificeFlow(inches(given(check, 'diameter')), psi(given(check, 'pressure')), given(check, 'Cd'))),
  }),
};

it.each(Object.entries(computed))('%s', (id, compute) => {
  const check: GoldenCheck = checks[id as keyof typeof checks];
  expectGolden(check, compute(check));
});

// Walnut Creek SUD TX prints no pressure, but its two rows stand to each other as the squares of the diameters.
it('ml-053: twice the hole loses four times the water', () => {
  const [small, large] = checks['ml-053'].inputs.hole[0].map((hole) => leakOfHole(inches(hole), psi(60)));
  const [printedSmall, printedLarge] = checks['ml-053'].expected.flow[0];
  expect(Math.abs((large ?? 0) / (small ?? 1) / ((printedLarge ?? 0) / (printedSmall ?? 1)) - 1)).toBeLessThanOrEqual(0.03);
});
