import { displacementMeterFlows } from '@rillbook/metering/meter-limits/displacement-meter.js';
import { paceOfMeter, registrationError, registrationLimits } from '@rillbook/metering/meter-limits/registration.js';
import { seenByMeter, smallestSeenFlow } from '@rillbook/metering/meter-limits/smallest-seen-flow.js';
import { gallonsPerMinuteFromLitresPerMinute, litresPerMinute, litresPerMinuteFromGallonsPerMinute } from '@rillbook/units/flow.js';
import { millimetres, millimetresFromInches } from '@rillbook/units/length.js';
import { litresFrom, litresFromGallons } from '@rillbook/units/volume.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const sizes = [0.625, 0.75, 1, 1.5, 2, 3, 4, 6];
const gallon = litresFromGallons(1);
/** Smallest flow of a meter of a size in inches, in gpm. */
const smallest = (inches: number | null, resolution = gallon, hours = 1) =>
  gallonsPerMinuteFromLitresPerMinute(smallestSeenFlow(inches === null ? null : millimetresFromInches(inches), resolution, hours));

describe('displacement meter', () => {
  it('of a larger size begins and ends at larger flows', () => {
    const flows = sizes.map((inches) => displacementMeterFlows(millimetresFromInches(inches)));
    flows.slice(1).forEach((flow, at) => {
      expect(flow?.minimumTestFlow).toBeGreaterThan(flows[at]?.minimumTestFlow ?? Number.NaN);
      expect(flow?.maximumNormalFlow).toBeGreaterThan(flows[at]?.maximumNormalFlow ?? Number.NaN);
      expect(flow?.minimumTestFlow).toBeLessThan(flow?.maximumNormalFlow ?? 0);
    });
  });

  it.each([
    [15, 0.625],
    [20, 0.75],
    [25, 1],
    [40, 1.5],
    [50, 2],
    [80, 3],
    [100, 4],
    [150, 6],
  ])('of %d mm is that of %d in', (metric, inches) => {
    const flows = displacementMeterFlows(millimetres(metric));
    expect(flows).not.toBeNull();
    expect(flows).toEqual(displacementMeterFlows(millimetresFromInches(inches)));
  });

  it('of a size that the table lacks is not known', () => {
    expect(displacementMeterFlows(millimetresFromInches(2.5))).toBeNull();
    expect(displacementMeterFlows(millimetresFromInches(10))).toBeNull();
    expect(() => displacementMeterFlows(millimetres(0))).toThrow(expect.objectContaining({ code: 'METER_SIZE_OUT_OF_DOMAIN' }));
  });
});

describe('smallest flow that a meter sees', () => {
  it('is the floor of 0.15 gpm where size and register see more', () => {
    expect(smallest(null)).toBeCloseTo(0.15, 12);
  });

  it('is the minimum test flow of its size', () => {
    expect(smallest(0.625)).toBeCloseTo(0.25, 12);
    expect(smallest(2)).toBeCloseTo(2, 12);
  });

  it('is two steps of its register between two readings', () => {
    expect(smallest(1, litresFrom(100, 'gal'))).toBeCloseTo(200 / 60, 12);
    expect(smallest(1, litresFrom(100, 'gal'), 0.25)).toBeCloseTo(800 / 60, 12);
    // A register of whole CCF, read each month of 30 days: the size counts, not the register.
    expect(smallest(1, litresFrom(1, 'CCF'), 720)).toBeCloseTo(0.75, 12);
    expect(smallest(null, litresFrom(1, 'CCF'), 24)).toBeCloseTo((2 * 748.05) / 1440, 4);
  });

  it('is the largest of the three, whatever they are', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(null, ...sizes),
        fc.double({ min: 0, max: 5000, noNaN: true }),
        fc.constantFrom(0.25, 1, 24),
        (inches, step, hours) => {
          const bounds = [
            litresPerMinuteFromGallonsPerMinute(0.15),
            inches === null ? 0 : (displacementMeterFlows(millimetresFromInches(inches))?.minimumTestFlow ?? 0),
            (2 * step) / (60 * hours),
          ];
          const size = inches === null ? null : millimetresFromInches(inches);
          expect(smallestSeenFlow(size, litresFrom(step, 'L'), hours)).toBeCloseTo(Math.max(...bounds), 12);
        },
      ),
    );
  });

  it('is known in part where the resolution or the size is not', () => {
    expect(smallestSeenFlow(millimetresFromInches(2), null, 1)).toBe(smallestSeenFlow(millimetresFromInches(2), gallon, 1));
    expect(smallest(10)).toBeCloseTo(0.15, 12);
  });

  // Town of Webster, Massachusetts: 30 drops a minute are 54 gal a month; a drip zone of 0.4 gpm; a hole of 1/8 in at 60 psi, 2.24 gpm.
  it('a one-inch meter does not see drops nor a small drip zone, but sees a hole of an eighth', () => {
    const limit = smallestSeenFlow(millimetresFromInches(1), gallon, 1);
    expect(seenByMeter(litresPerMinuteFromGallonsPerMinute(54 / (30.4 * 1440)), limit)).toBe('not seen by this meter');
    expect(seenByMeter(litresPerMinuteFromGallonsPerMinute(0.4), limit)).toBe('not seen by this meter');
    expect(seenByMeter(litresPerMinuteFromGallonsPerMinute(2.24), limit)).toBe('seen');
    expect(seenByMeter(limit, limit)).toBe('seen');
  });

  it.each<[string, () => unknown]>([
    ['no time', () => smallestSeenFlow(null, gallon, 0)],
    ['a resolution below zero', () => smallestSeenFlow(null, litresFromGallons(-1), 1)],
    ['a flow below zero', () => seenByMeter(litresPerMinute(-1), litresPerMinute(1))],
  ])('refuses %s by code', (_, deed) => {
    expect(deed).toThrow(expect.objectContaining({ code: 'SMALLEST_FLOW_OUT_OF_DOMAIN' }));
  });
});

describe('registration', () => {
  it('limits at minimum flow hold those at normal flow to the slow side only', () => {
    const [normal, minimum] = [registrationLimits('maximum'), registrationLimits('minimum')];
    expect(minimum.from).toBeLessThan(normal.from);
    expect(minimum.to).toBeLessThan(normal.to);
  });

  it('error has the sign of the meter less the standard, and the meter as its base', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1e4, noNaN: true }), fc.double({ min: 1, max: 1e4, noNaN: true }), (meter, standard) => {
        const error = registrationError(meter, standard);
        expect(meter * (1 - error / 100)).toBeCloseTo(standard, 6);
        expect(paceOfMeter(error)).toBe(meter > standard ? 'fast' : meter < standard ? 'slow' : 'true');
      }),
    );
  });

  it('refuses a meter that registered nothing, and no number, by code', () => {
    expect(() => registrationError(0, 5)).toThrow(expect.objectContaining({ code: 'REGISTRATION_OUT_OF_DOMAIN' }));
    expect(() => paceOfMeter(Number.NaN)).toThrow(expect.objectContaining({ code: 'REGISTRATION_OUT_OF_DOMAIN' }));
  });
});
