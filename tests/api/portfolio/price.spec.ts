import { litresFrom } from '@rillbook/units/volume.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  costOfVolume,
  marginalPricePerLitre,
  type PriceTier,
  tiersInForce,
} from '../../../apps/api/src/features/portfolio/suppliers/price.js';

const CCF = litresFrom(1, 'CCF');
const KGAL = litresFrom(1, 'kgal');
const tier = (values: Partial<PriceTier>): PriceTier => ({
  effectiveFrom: '2026-01-01',
  fixed: null,
  tier: 1,
  upTo: null,
  upToIs: null,
  unit: 'CCF',
  price: 4,
  ...values,
});
const byVolume = [
  tier({ fixed: 20, upTo: 10, upToIs: 'volume', price: 3 }),
  tier({ fixed: 20, tier: 2, upTo: 30, upToIs: 'volume', price: 4 }),
  tier({ fixed: 20, tier: 3, price: 6 }),
];
const byShare = [tier({ upTo: 1, upToIs: 'share of allowance', price: 3 }), tier({ tier: 2, price: 6 })];
const of = (tiers: PriceTier[], meters: { unit: string; pricePerUnit: number | null }[] = []) => ({ month: '2026-07', tiers, meters });
const at = (litres: number, allowedLitres: number | null = null) => ({ litres, allowedLitres });

// Blocks of rising price are common practice of water suppliers; the figures are worked by hand.
describe('cost of a volume', () => {
  it('fills one tier after the other and adds the fixed charge once', () => {
    expect(costOfVolume(of(byVolume), at(0))).toBe(20);
    expect(costOfVolume(of(byVolume), at(5 * CCF))).toBeCloseTo(20 + 15, 9);
    expect(costOfVolume(of(byVolume), at(10 * CCF))).toBeCloseTo(20 + 30, 9);
    expect(costOfVolume(of(byVolume), at(35 * CCF))).toBeCloseTo(20 + 10 * 3 + 20 * 4 + 5 * 6, 9);
  });

  it('ends tiers at shares of the allowance, and is not known where that is not', () => {
    expect(costOfVolume(of(byShare), at(50 * CCF, 40 * CCF))).toBeCloseTo(40 * 3 + 10 * 6, 9);
    expect(costOfVolume(of(byShare), at(50 * CCF))).toBeNull();
    expect(costOfVolume(of([tier({ upTo: 2, upToIs: 'share of allowance' })]), at(50 * CCF))).toBeCloseTo(200, 9);
  });

  it('goes on at the last price where the supplier printed an end for it', () => {
    expect(costOfVolume(of([tier({ upTo: 10, upToIs: 'volume', price: 3 })]), at(20 * CCF))).toBeCloseTo(60, 9);
  });

  it('comes from the meters where there are no rates, and is not known where they differ or say nothing', () => {
    expect(costOfVolume(of([], [{ unit: 'kgal', pricePerUnit: 5 }]), at(3 * KGAL))).toBeCloseTo(15, 9);
    expect(
      costOfVolume(
        of(
          [],
          [
            { unit: 'kgal', pricePerUnit: 5 },
            { unit: 'CCF', pricePerUnit: null },
          ],
        ),
        at(3 * KGAL),
      ),
    ).toBeCloseTo(15, 9);
    expect(
      costOfVolume(
        of(
          [],
          [
            { unit: 'kgal', pricePerUnit: 5 },
            { unit: 'kgal', pricePerUnit: 7 },
          ],
        ),
        at(3 * KGAL),
      ),
    ).toBeNull();
    expect(costOfVolume(of([], [{ unit: 'kgal', pricePerUnit: null }]), at(3 * KGAL))).toBeNull();
    expect(costOfVolume(of([]), at(3 * KGAL))).toBeNull();
  });
});

describe('marginal price', () => {
  it('is the price of the tier in which a volume ends', () => {
    expect(marginalPricePerLitre(of(byVolume), at(5 * CCF))! * CCF).toBeCloseTo(3, 9);
    expect(marginalPricePerLitre(of(byVolume), at(10 * CCF))! * CCF).toBeCloseTo(4, 9);
    expect(marginalPricePerLitre(of(byVolume), at(99 * CCF))! * CCF).toBeCloseTo(6, 9);
    expect(marginalPricePerLitre(of(byShare), at(50 * CCF, 40 * CCF))! * CCF).toBeCloseTo(6, 9);
  });

  it('is the lowest where volume or allowance is not known: no saving is overstated', () => {
    expect(marginalPricePerLitre(of(byVolume), null)! * CCF).toBeCloseTo(3, 9);
    expect(marginalPricePerLitre(of(byShare), at(50 * CCF))! * CCF).toBeCloseTo(3, 9);
  });

  it('comes from the meters where there are no rates, else is null', () => {
    expect(marginalPricePerLitre(of([], [{ unit: 'm3', pricePerUnit: 2 }]), null)).toBeCloseTo(0.002, 12);
    expect(marginalPricePerLitre(of([]), null)).toBeNull();
  });
});

describe('the schedule in force', () => {
  const old = tier({ effectiveFrom: '2025-07-01', price: 3 });
  const late = tier({ effectiveFrom: '2026-07-02', price: 5 });

  it('is the newest that had begun on the first day of the month, its tiers in order', () => {
    expect(tiersInForce([late, old], '2026-07')).toEqual([old]);
    expect(tiersInForce([late, old], '2026-08')).toEqual([late]);
    expect(tiersInForce([late, old], '2025-06')).toEqual([]);
    expect(tiersInForce([...byVolume].reverse(), '2026-07')).toEqual(byVolume);
  });

  it('leaves months before the first schedule to the meters', () => {
    expect(marginalPricePerLitre({ month: '2025-06', tiers: [old], meters: [{ unit: 'L', pricePerUnit: 1 }] }, null)).toBe(1);
  });
});

it('costs never fall with the volume, and the marginal price is their slope', () => {
  fc.assert(
    fc.property(
      fc.array(fc.record({ width: fc.double({ min: 0.5, max: 50, noNaN: true }), price: fc.double({ min: 0, max: 20, noNaN: true }) }), {
        minLength: 1,
        maxLength: 5,
      }),
      fc.double({ min: 0, max: 200, noNaN: true }),
      (blocks, units) => {
        let end = 0;
        const tiers = blocks.map(({ width, price }, index) => tier({ tier: index + 1, price, upTo: (end += width), upToIs: 'volume' }));
        const step = 1e-3 * CCF;
        const [low, high] = [costOfVolume(of(tiers), at(units * CCF))!, costOfVolume(of(tiers), at(units * CCF + step))!];
        expect(high).toBeGreaterThanOrEqual(low - 1e-9);
        const crosses = tiers.some((one) => one.upTo! * CCF > units * CCF && one.upTo! * CCF <= units * CCF + step);
        if (!crosses) expect((high - low) / step).toBeCloseTo(marginalPricePerLitre(of(tiers), at(units * CCF))!, 6);
      },
    ),
  );
});
