import { computeMonthAccount } from '@rillbook/metering/account/compute-month-account.js';
import type { AccountInput } from '@rillbook/metering/account/account-input.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { identityMisses, largest, someProperty } from '../../../support/worlds/random-world.mjs';

const known = (value: number | null) => value ?? Number.NaN;

describe('the account adds up', () => {
  // A hundredth of `npm run prove -- identity`.
  it('M - A = (M - P) + (P - N) + (N - A), for the property and every meter, wherever all four exist', () => {
    let [asked, compared] = [0, 0];
    fc.assert(
      fc.property(someProperty, (input) => {
        asked += 1;
        for (const miss of identityMisses(computeMonthAccount(input))) {
          if (miss === null) continue;
          expect(miss).toBeLessThanOrEqual(1e-9);
          compared += 1;
        }
      }),
      { numRuns: 1000 },
    );
    expect(compared).toBeGreaterThan(0.6 * asked);
  });

  it('over less under is the settings gap, in the property and in its zones', () => {
    fc.assert(
      fc.property(someProperty, (input) => {
        const { property, zones } = computeMonthAccount(input);
        if (property.settingsGap.litres === null) return;
        const { litres, overLitres, underLitres } = property.settingsGap;
        expect(Math.abs(known(overLitres) - known(underLitres) - litres)).toBeLessThanOrEqual(1e-9 * largest(property));
        const own = zones.filter(({ scope }) => scope === 'metered');
        expect(own.reduce((sum, zone) => sum + known(zone.overLitres), 0)).toBeCloseTo(known(overLitres), 4);
        expect(own.reduce((sum, zone) => sum + known(zone.underLitres), 0)).toBeCloseTo(known(underLitres), 4);
      }),
      { numRuns: 300 },
    );
  });

  it('a value that is absent has a reason, and one that is there has none', () => {
    fc.assert(
      fc.property(someProperty, (input) => {
        const { property } = computeMonthAccount(input);
        for (const value of Object.values(property)) {
          expect(value.litres === null).toBe(value.reason !== null);
          if (value.litres !== null) expect(Number.isFinite(value.litres) && known(value.sdLitres) >= 0).toBe(true);
        }
      }),
      { numRuns: 200 },
    );
  });
});

describe('monotone', () => {
  const needed = (input: AccountInput) => computeMonthAccount(input).property.needed.litres;
  const compare = (change: (input: AccountInput) => AccountInput, holds: (before: number, after: number) => boolean) =>
    fc.assert(
      fc.property(someProperty, (input) => {
        const [before, after] = [needed(input), needed(change(input))];
        if (before !== null && after !== null) expect(holds(before, after)).toBe(true);
      }),
      { numRuns: 200 },
    );

  it('more plant factor never needs less', () => {
    const thirstier = (input: AccountInput) => ({
      ...input,
      zones: input.zones.map((zone) => ({ ...zone, plantFactor: zone.plantFactor * 1.2 })),
    });
    compare(thirstier, (before, after) => after >= before - 1e-6);
  });

  it('better uniformity never needs more', () => {
    const better = (input: AccountInput) => ({
      ...input,
      zones: input.zones.map((zone) => ({ ...zone, duLq: Math.min(1, zone.duLq * 1.1) })),
    });
    compare(better, (before, after) => after <= before + 1e-6);
  });

  it('a dry spell never needs less than the same with rain', () => {
    const dry = (input: AccountInput) => ({ ...input, days: input.days.map((day) => ({ ...day, rainMm: 0 })) });
    compare(dry, (before, after) => after >= before - 1e-6);
  });
});
