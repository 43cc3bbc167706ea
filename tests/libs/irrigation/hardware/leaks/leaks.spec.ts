import { dripFlow } from '@rillbook/irrigation/hardware/leaks/dripping.js';
import { orificeFlow, SMOOTH_NOZZLE } from '@rillbook/irrigation/hardware/flow/orifice-flow.js';
import { leakOfHole } from '@rillbook/irrigation/hardware/leaks/hole-leak.js';
import { flowOfDailyLoss, leakVolume } from '@rillbook/irrigation/hardware/leaks/leak-volume.js';
import { leakOfBrokenHead, leakOfCutDripLine, leakOfStuckValve } from '@rillbook/irrigation/hardware/leaks/zone-leak.js';
import { gallonsPerMinuteFromLitresPerMinute, litresPerMinute, litresPerMinuteFromGallonsPerMinute } from '@rillbook/units/flow.js';
import { millimetres, millimetresFromInches } from '@rillbook/units/length.js';
import { kilopascals, kilopascalsFromPsi } from '@rillbook/units/pressure.js';
import { litres } from '@rillbook/units/volume.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const flows = fc.double({ min: 0, max: 200, noNaN: true });
const anEnd = fc.record({
  bore: fc.double({ min: 0, max: 50, noNaN: true }).map((bore) => millimetres(bore)),
  pressure: fc.double({ min: 0, max: 900, noNaN: true }).map((pressure) => kilopascals(pressure)),
  supply: flows.map((supply) => litresPerMinute(supply)),
});

describe('leaks of a zone', () => {
  it('a stuck valve loses the flow of its zone', () => {
    expect(leakOfStuckValve(litresPerMinute(42))).toBe(42);
  });

  it('an open end loses at most what the supply brings, and at most what its bore lets out', () => {
    fc.assert(
      fc.property(anEnd, flows, (end, headFlow) => {
        const lost = leakOfCutDripLine(end);
        expect(lost).toBeLessThanOrEqual(end.supply);
        expect(lost).toBeLessThanOrEqual(orificeFlow(end.bore, end.pressure, SMOOTH_NOZZLE));
        expect(leakOfBrokenHead(end, litresPerMinute(headFlow))).toBe(Math.max(0, lost - headFlow));
      }),
    );
  });

  // Extension circular SCR-23, Table 3: a smooth nozzle of 3/16 in at 50 psi puts out 7.18 gpm, which a hole of 0.62 would not.
  it('the bound of an open end is the flow of a smooth nozzle of its bore, not of a hole with a sharp edge', () => {
    const bore = millimetresFromInches(0.1875);
    const pressure = kilopascalsFromPsi(50);
    const bound = leakOfCutDripLine({ bore, pressure, supply: litresPerMinute(100) });
    expect(Math.abs(gallonsPerMinuteFromLitresPerMinute(bound) / 7.18 - 1)).toBeLessThanOrEqual(0.012);
    expect(bound / leakOfHole(bore, pressure)).toBeCloseTo(0.97 / 0.62, 9);
    expect(leakOfBrokenHead({ bore, pressure, supply: litresPerMinute(100) }, litresPerMinute(5))).toBeCloseTo(bound - 5, 9);
  });

  // A repair firm's statement, weak: a sheared riser loses about 15 gpm. The bound must not lie below it.
  it('the bound of a sheared half-inch riser at 30 psi is not below 15 gpm', () => {
    const riser = { bore: millimetresFromInches(0.5), pressure: kilopascalsFromPsi(30), supply: litresPerMinuteFromGallonsPerMinute(30) };
    expect(gallonsPerMinuteFromLitresPerMinute(leakOfBrokenHead(riser, litresPerMinute(0)))).toBeGreaterThan(15);
  });

  it.each<[string, () => unknown, string]>([
    ['a zone flow below zero', () => leakOfStuckValve(litresPerMinute(-1)), 'LEAK_OUT_OF_DOMAIN'],
    [
      'a supply below zero',
      () => leakOfCutDripLine({ bore: millimetres(16), pressure: kilopascals(200), supply: litresPerMinute(-1) }),
      'LEAK_OUT_OF_DOMAIN',
    ],
    ['days below zero', () => leakVolume(litresPerMinute(1), -1), 'LEAK_OUT_OF_DOMAIN'],
    ['a loss below zero', () => flowOfDailyLoss(litres(-1)), 'LEAK_OUT_OF_DOMAIN'],
    ['drops below zero', () => dripFlow(-1), 'DROPS_OUT_OF_DOMAIN'],
  ])('refuses %s by code', (_, deed, code) => {
    expect(deed).toThrow(expect.objectContaining({ code }));
  });
});

describe('drops and days', () => {
  it('counted drops are a range, the likely flow within it', () => {
    const { least, likely, most } = dripFlow(60);
    expect(least).toBeLessThan(likely);
    expect(likely).toBeLessThan(most);
    expect(dripFlow(0)).toEqual({ least: 0, likely: 0, most: 0 });
  });

  // A federal drip calculator, from memory: 15,140 drops a gallon, a quarter of a millilitre each.
  it('the likely drop is a quarter of a millilitre', () => {
    expect(gallonsPerMinuteFromLitresPerMinute(dripFlow(15_140).likely)).toBeCloseTo(1, 3);
  });

  it('a daily loss and its flow turn round without loss', () => {
    fc.assert(
      fc.property(flows, (flow) => {
        expect(flowOfDailyLoss(leakVolume(litresPerMinute(flow), 1))).toBeCloseTo(flow, 9);
      }),
    );
  });
});
