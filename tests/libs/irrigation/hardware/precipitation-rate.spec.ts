import { cycleLimit, cyclesFor } from '@rillbook/irrigation/hardware/run-time/cycle-limit.js';
import { flowAgreesWithRate } from '@rillbook/irrigation/hardware/precipitation/flow-agreement.js';
import { flowFromPrecipitationRate, precipitationRateFromFlow } from '@rillbook/irrigation/hardware/precipitation/precipitation-rate.js';
import { squareMetres, squareMetresFromSquareFeet } from '@rillbook/units/area.js';
import {
  inchesPerHourFromMillimetresPerHour,
  millimetresPerHour,
  millimetresPerHourFromInchesPerHour,
} from '@rillbook/units/depth-rate.js';
import { litresPerMinute, litresPerMinuteFromGallonsPerMinute } from '@rillbook/units/flow.js';
import { millimetresFromInches } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cycleLimitExample, metricDrip, totalAreaRates } from '../../../golden/precipitation-rate/values.js';

const minutes = (value: number) => value as Quantity<'min'>;

describe('precipitation rate', () => {
  // Total area method, public course and extension pages; tests/golden/precipitation-rate.
  it.each(totalAreaRates)('$gallonsPerMinute gpm on $squareFeet ft2 is $inchesPerHour in/h', (row) => {
    const rate = precipitationRateFromFlow(
      litresPerMinuteFromGallonsPerMinute(row.gallonsPerMinute),
      squareMetresFromSquareFeet(row.squareFeet),
    );
    expect(Math.abs(inchesPerHourFromMillimetresPerHour(rate) - row.inchesPerHour)).toBeLessThanOrEqual(row.tolerance);
  });

  it('has the constant 96.25 in US units', () => {
    const rate = precipitationRateFromFlow(litresPerMinuteFromGallonsPerMinute(1), squareMetresFromSquareFeet(1));
    expect(inchesPerHourFromMillimetresPerHour(rate)).toBeCloseTo(96.25, 2);
  });

  // Metric drip example of a public extension text: litres per hour and square metre are millimetres per hour.
  it('runs metric drip for as long as printed', () => {
    const rate = precipitationRateFromFlow(litresPerMinute(metricDrip.litresPerHour / 60), squareMetres(metricDrip.squareMetres));
    expect(Math.abs((60 * metricDrip.neededMm) / rate - metricDrip.minutesPerDay)).toBeLessThanOrEqual(metricDrip.tolerance);
  });

  it('turns round without loss', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 500, noNaN: true }), fc.double({ min: 1, max: 20_000, noNaN: true }), (flow, area) => {
        const rate = precipitationRateFromFlow(litresPerMinute(flow), squareMetres(area));
        expect(flowFromPrecipitationRate(rate, squareMetres(area))).toBeCloseTo(flow, 9);
      }),
    );
  });

  it('refuses an area of nothing by code', () => {
    expect(() => precipitationRateFromFlow(litresPerMinute(4), squareMetres(0))).toThrow(
      expect.objectContaining({ code: 'PRECIPITATION_RATE_OUT_OF_DOMAIN', details: { flow: 4, area: 0 } }),
    );
  });

  it('calls flow and rate disagreeing beyond a tenth', () => {
    expect(flowAgreesWithRate(litresPerMinute(10), millimetresPerHour(11), squareMetres(60))).toBe(true);
    expect(flowAgreesWithRate(litresPerMinute(10), millimetresPerHour(11.1), squareMetres(60))).toBe(false);
  });
});

describe('cycle limit', () => {
  // Irrigation Association (2005) formula as coded in a university package; tests/golden/precipitation-rate.
  it('is 8 minutes for the example', () => {
    const limit = cycleLimit(
      millimetresFromInches(cycleLimitExample.accumulationIn),
      millimetresPerHourFromInchesPerHour(cycleLimitExample.rateInPerH),
      millimetresPerHourFromInchesPerHour(cycleLimitExample.intakeInPerH),
    );
    expect(Math.abs((limit ?? 0) - cycleLimitExample.minutes)).toBeLessThanOrEqual(cycleLimitExample.tolerance);
    expect(cyclesFor(minutes(24), limit)).toBe(3);
    expect(cyclesFor(minutes(25), limit)).toBe(4);
  });

  it('is none where the soil takes all that comes', () => {
    expect(cycleLimit(millimetresFromInches(0.2), millimetresPerHour(10), millimetresPerHour(10))).toBeNull();
    expect(cyclesFor(minutes(90), null)).toBe(1);
  });
});
