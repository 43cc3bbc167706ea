import { flowOfHeads } from '@rillbook/irrigation/hardware/flow/flow-of-heads.js';
import { precipitationRateFromCans, precipitationRateFromDepth } from '@rillbook/irrigation/hardware/precipitation/catch-can-rate.js';
import { precipitationRateOfDripGrid, precipitationRateOfEmitterDensity } from '@rillbook/irrigation/hardware/precipitation/drip-rate.js';
import { precipitationRateOfPattern } from '@rillbook/irrigation/hardware/precipitation/head-layout.js';
import { precipitationRateFromFlow } from '@rillbook/irrigation/hardware/precipitation/precipitation-rate.js';
import { baseMinutes } from '@rillbook/irrigation/hardware/run-time/run-minutes.js';
import { squareMetresFromSquareFeet, squareMetresFromSquareInches } from '@rillbook/units/area.js';
import { inchesPerHourFromMillimetresPerHour } from '@rillbook/units/depth-rate.js';
import {
  gallonsPerMinuteFromLitresPerMinute,
  litresPerMinuteFromGallonsPerHour,
  litresPerMinuteFromGallonsPerMinute,
  litresPerMinuteFromLitresPerHour,
} from '@rillbook/units/flow.js';
import { metresFromFeet, millimetres, millimetresFromInches } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { litresFrom } from '@rillbook/units/volume.js';
import { expect, it } from 'vitest';
import { expectGolden, given, givenRow, type GoldenCheck, type GoldenValue } from '../golden-check.js';
import { checks } from './values.js';

const minutes = (value: number) => value as Quantity<'min'>;
const gpm = litresPerMinuteFromGallonsPerMinute;
const feet = metresFromFeet;
const inchesAsMetres = (inches: number) => feet(inches / 12);
const inchesPerHour = inchesPerHourFromMillimetresPerHour;
/** Conversions there and back leave floating-point dust behind the twelfth digit. */
const dusted = (value: number) => Number(value.toPrecision(12));

const computed: Readonly<Record<keyof typeof checks, (check: GoldenCheck) => Readonly<Record<string, GoldenValue>>>> = {
  'ss-029': (check) => {
    const rate = precipitationRateFromDepth(millimetresFromInches(given(check, 'depth')), minutes(given(check, 'time')));
    const run = (inches: number) => dusted(baseMinutes(millimetresFromInches(inches), rate));
    return { minutes_per_inch: run(1), 'minutes_for_1.5in': run(1.5) };
  },
  'ss-030': (check) => ({
    PR: inchesPerHour(precipitationRateFromFlow(gpm(given(check, 'flow')), squareMetresFromSquareFeet(given(check, 'area')))),
  }),
  'ss-050': (check) => ({
    PR: inchesPerHour(
      precipitationRateOfDripGrid(
        litresPerMinuteFromGallonsPerHour(given(check, 'q')),
        inchesAsMetres(given(check, 'row')),
        inchesAsMetres(given(check, 'emitter')),
      ),
    ),
  }),
  'ss-051': (check) => {
    const rate = precipitationRateOfEmitterDensity(litresPerMinuteFromLitresPerHour(given(check, 'emitter')), given(check, 'density'));
    return { run: baseMinutes(millimetres(given(check, 'need')), rate) };
  },
  'total-area-of-ten-heads': (check) => {
    const flows = givenRow(check, 'flow');
    const flow = flowOfHeads(givenRow(check, 'count').map((count, at) => ({ count, flow: gpm(flows[at] ?? Number.NaN) })));
    const area = squareMetresFromSquareFeet(given(check, 'length') * given(check, 'width'));
    return { flow: gallonsPerMinuteFromLitresPerMinute(flow), PR: inchesPerHour(precipitationRateFromFlow(flow, area)) };
  },
  'head-spacing': (check) => ({
    PR: inchesPerHour(
      precipitationRateOfPattern(gpm(given(check, 'flow')), feet(given(check, 'head_spacing')), feet(given(check, 'row_spacing'))),
    ),
  }),
  'catch-cans': (check) => ({
    PR: inchesPerHour(
      precipitationRateFromCans(
        litresFrom(given(check, 'mean_catch'), 'mL'),
        minutes(given(check, 'time')),
        squareMetresFromSquareInches(given(check, 'mouth')),
      ),
    ),
  }),
  'us-constants': () => ({
    total_area: inchesPerHour(precipitationRateFromFlow(gpm(1), squareMetresFromSquareFeet(1))),
    catch_cans: inchesPerHour(precipitationRateFromCans(litresFrom(1, 'mL'), minutes(1), squareMetresFromSquareInches(1))),
    drip_grid: inchesPerHour(precipitationRateOfDripGrid(litresPerMinuteFromGallonsPerHour(1), inchesAsMetres(1), inchesAsMetres(1))),
  }),
};

it.each(Object.entries(computed))('%s', (id, compute) => {
  const check: GoldenCheck = checks[id as keyof typeof checks];
  expectGolden(check, compute(check));
});

it('the triangular layout of that page is not 0.89 in/h: 0.866 is not applied twice', () => {
  const rate = inchesPerHour(precipitationRateOfPattern(gpm(6), feet(25), feet(30)));
  expect(rate).toBeLessThan(0.8);
  expect(rate / 0.866).toBeCloseTo(0.89, 2);
});
