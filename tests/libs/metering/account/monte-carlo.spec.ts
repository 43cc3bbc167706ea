import type { AccountInput } from '@rillbook/metering/account/account-input.js';
import { computeMonthAccount } from '@rillbook/metering/account/compute-month-account.js';
import { defaultRelativeSd as sd } from '@rillbook/metering/uncertainty/default-relative-sd.js';
import { describe, expect, it } from 'vitest';
import { aController, aFact, aMeter, anInterval, aProgram, aProperty, aZone, weather } from '../a-property.js';

const SEED = 20_260_601;
const DRAWS = 2500;
const GAPS = ['unexplainedGap', 'settingsGap', 'landscapeGap', 'meteredOverNeeded', 'meteredOverAllowed'] as const;

/** Standard normal numbers from a seed of our own (mulberry32 and Box-Muller), so that the test is the same everywhere. */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

const base = (rainMm: (date: string) => number): AccountInput =>
  aProperty({
    days: weather('2026-03-03', '2026-06-30', (date) => ({ rainMm: rainMm(date), etoRelativeSd: 0.08 })),
    zones: [
      aZone({ duLq: 0.65, plantFactor: 0.7 }),
      aZone({ id: 'z2', station: 2, duLq: 0.75, plantFactor: 0.5, areaM2: 180, flowLPerMin: 15, flowSource: 'derived' }),
    ],
    controllers: [aController([aFact([aProgram({ 1: 30, 2: 25 })])])],
    meters: [aMeter([anInterval('2026-06-01', '2026-07-01', 42_000)], { kind: 'mixed', indoorLitresPerDay: 150 })],
    allowance: { from: 'ordinance', etaf: 0.6, specialLandscapeAreaM2: 0 },
  });

/** One draw of the same model: every input off by its own error, a shared input by the same error wherever it is used. */
function drawn(input: AccountInput, normal: () => number): AccountInput {
  const off = (relative: number) => 1 + relative * normal();
  const [eto, rain, meter, indoor] = [off(0.08), off(sd.rain), off(sd.meter), off(sd.indoor.stated)];
  return {
    ...input,
    days: input.days.map((day) => ({ ...day, etoMm: (day.etoMm ?? 0) * eto, rainMm: (day.rainMm ?? 0) * rain })),
    zones: input.zones.map((zone) => {
      const area = off(sd.area.recorded);
      const flow = zone.flowSource === 'derived' ? area * off(sd.flow.derived) : off(sd.flow.measured);
      return {
        ...zone,
        areaM2: zone.areaM2 * area,
        plantFactor: zone.plantFactor * off(sd.plantFactor.recorded),
        rawMm: zone.rawMm * off(sd.rootStorage.recorded),
        duLq: Math.min(1, zone.duLq * off(sd.uniformity.recorded)),
        flowLPerMin: (zone.flowLPerMin ?? 0) * flow,
      };
    }),
    meters: input.meters.map((each) => ({
      ...each,
      indoorLitresPerDay: (each.indoorLitresPerDay ?? 0) * indoor,
      intervals: each.intervals.map((interval) => ({ ...interval, litres: interval.litres * meter })),
    })),
  };
}

function observedSds(input: AccountInput): ReadonlyMap<string, number> {
  const normal = normals(SEED);
  const draws = Array.from({ length: DRAWS }, () => computeMonthAccount(drawn(input, normal)).property);
  return new Map(
    GAPS.map((gap) => {
      const values = draws.map((property) => property[gap].litres ?? Number.NaN);
      const mean = values.reduce((sum, value) => sum + value, 0) / DRAWS;
      return [gap, Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (DRAWS - 1))];
    }),
  );
}

// A sample's standard deviation has itself a relative standard deviation of 1/sqrt(2n); four of them, and a share for what first order leaves out.
const sampling = 4 / Math.sqrt(2 * DRAWS);

describe('uncertainty of the gaps against Monte Carlo of the same model', () => {
  it('agrees in a dry month, where the balance is nearly linear', () => {
    const input = base(() => 0);
    const observed = observedSds(input);
    const { property } = computeMonthAccount(input);
    for (const gap of GAPS) {
      const ratio = (property[gap].sdLitres ?? Number.NaN) / (observed.get(gap) ?? Number.NaN);
      expect(Math.abs(ratio - 1), gap).toBeLessThanOrEqual(sampling + 0.015);
    }
  });

  it('agrees in a month of showers, where it has corners', () => {
    const input = base((date) => (['2026-05-29', '2026-06-04', '2026-06-05', '2026-06-17', '2026-06-28'].includes(date) ? 9 : 0));
    const observed = observedSds(input);
    const { property } = computeMonthAccount(input);
    for (const gap of GAPS) {
      const ratio = (property[gap].sdLitres ?? Number.NaN) / (observed.get(gap) ?? Number.NaN);
      expect(Math.abs(ratio - 1), gap).toBeLessThanOrEqual(sampling + 0.03);
    }
  });

  it('differs from adding the volumes own variances, which share area and evapotranspiration', () => {
    const { property } = computeMonthAccount(base(() => 0));
    const naive = Math.hypot(property.needed.sdLitres ?? 0, property.allowed.sdLitres ?? 0);
    expect(naive).toBeGreaterThan(1.1 * (property.landscapeGap.sdLitres ?? 0));
  });

  it('names the inputs that matter, first the one to measure next', () => {
    const { inputs } = computeMonthAccount(base(() => 0)).property.settingsGap;
    // By hand: 15 % of z2's need of 15,882 L are 2,382 L; 8 % of both zones' 29,173 L are 2,334 L; 20 % of z2's program of 11,250 L are 2,250 L.
    expect(inputs.slice(0, 3)).toMatchObject([
      { input: 'plantFactor', subjectId: 'z2' },
      { input: 'eto', subjectId: null },
      { input: 'precipitationRate', subjectId: 'z2' },
    ]);
    const total = inputs.reduce((sum, { varianceShare }) => sum + varianceShare, 0);
    expect(total).toBeGreaterThan(0.9);
    expect(total).toBeLessThanOrEqual(1 + 1e-9);
  });
});
