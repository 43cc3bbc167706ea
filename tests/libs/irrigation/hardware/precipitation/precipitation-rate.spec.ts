import { flowOfHeads } from '@rillbook/irrigation/hardware/flow/flow-of-heads.js';
import { precipitationRateFromCans, precipitationRateFromDepth } from '@rillbook/irrigation/hardware/precipitation/catch-can-rate.js';
import { precipitationRateOfDripGrid, precipitationRateOfEmitterDensity } from '@rillbook/irrigation/hardware/precipitation/drip-rate.js';
import { flowAgreesWithRate } from '@rillbook/irrigation/hardware/precipitation/flow-agreement.js';
import {
  areaPerHead,
  fullCircleFlow,
  precipitationRateOfPattern,
  triangularRowSpacing,
} from '@rillbook/irrigation/hardware/precipitation/head-layout.js';
import { flowFromPrecipitationRate, precipitationRateFromFlow } from '@rillbook/irrigation/hardware/precipitation/precipitation-rate.js';
import { degrees } from '@rillbook/units/angle.js';
import { squareMetres } from '@rillbook/units/area.js';
import { millimetresPerHour } from '@rillbook/units/depth-rate.js';
import { litresPerMinute } from '@rillbook/units/flow.js';
import { metres, millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { litres } from '@rillbook/units/volume.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const minutes = (value: number) => value as Quantity<'min'>;
const flows = fc.double({ min: 0.1, max: 60, noNaN: true });
const spacings = fc.double({ min: 0.2, max: 25, noNaN: true });
const counts = fc.integer({ min: 1, max: 40 });

/** Demands that numbers are the same to the last digits of the machine. */
const expectSame = (one: number, other: number) => expect(Math.abs(one - other)).toBeLessThanOrEqual(1e-12 * Math.abs(other));

describe('total area method', () => {
  it('turns round without loss', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 500, noNaN: true }), fc.double({ min: 1, max: 20_000, noNaN: true }), (flow, area) => {
        const rate = precipitationRateFromFlow(litresPerMinute(flow), squareMetres(area));
        expectSame(flowFromPrecipitationRate(rate, squareMetres(area)), flow);
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

describe('the formulas agree on one layout', () => {
  it('head spacing and total area: rows and columns of heads, each with its own area', () => {
    fc.assert(
      fc.property(flows, spacings, spacings, counts, (flow, along, between, count) => {
        const byPattern = precipitationRateOfPattern(litresPerMinute(flow), metres(along), metres(between));
        const zoneFlow = flowOfHeads([{ count, flow: litresPerMinute(flow) }]);
        const zoneArea = squareMetres(count * areaPerHead(metres(along), metres(between)));
        expectSame(byPattern, precipitationRateFromFlow(zoneFlow, zoneArea));
      }),
    );
  });

  it('a rectangle with matched full, half and quarter heads has the rate of its full heads', () => {
    fc.assert(
      fc.property(flows, spacings, spacings, counts, counts, (flow, along, between, rows, columns) => {
        const heads = [
          { count: 4, flow: litresPerMinute(flow / 4) },
          { count: 2 * (rows - 1) + 2 * (columns - 1), flow: litresPerMinute(flow / 2) },
          { count: (rows - 1) * (columns - 1), flow: litresPerMinute(flow) },
        ];
        const area = squareMetres(rows * between * (columns * along));
        const byPattern = precipitationRateOfPattern(litresPerMinute(flow), metres(along), metres(between));
        expectSame(precipitationRateFromFlow(flowOfHeads(heads), area), byPattern);
      }),
    );
  });

  it('drip grid and emitters on a square metre', () => {
    fc.assert(
      fc.property(flows, spacings, spacings, (flow, row, emitter) => {
        const grid = precipitationRateOfDripGrid(litresPerMinute(flow), metres(row), metres(emitter));
        expectSame(grid, precipitationRateOfEmitterDensity(litresPerMinute(flow), 1 / (row * emitter)));
        expectSame(grid, precipitationRateOfPattern(litresPerMinute(flow), metres(emitter), metres(row)));
      }),
    );
  });

  it('cans under an even rain catch the rate that flow and area say', () => {
    fc.assert(
      fc.property(
        flows,
        fc.double({ min: 10, max: 5000, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        (flow, area, time) => {
          const rate = precipitationRateFromFlow(litresPerMinute(flow), squareMetres(area));
          const depth = millimetres((flow * time) / area);
          const mouth = squareMetres(0.0107);
          expectSame(precipitationRateFromDepth(depth, minutes(time)), rate);
          expectSame(precipitationRateFromCans(litres(depth * mouth), minutes(time), mouth), rate);
        },
      ),
    );
  });
});

describe('patterns of heads', () => {
  it('an equilateral triangle has its heads as far apart across rows as along them', () => {
    const along = 10;
    const between = triangularRowSpacing(metres(along));
    expect(between / along).toBeCloseTo(0.866, 3);
    expect(Math.hypot(along / 2, between)).toBeCloseTo(along, 12);
  });

  it('a half circle counts as twice its flow', () => {
    expect(fullCircleFlow(litresPerMinute(4), degrees(180))).toBe(8);
    expect(fullCircleFlow(litresPerMinute(4), degrees(360))).toBe(4);
  });

  it.each<[string, () => unknown, string]>([
    ['a spacing of nothing', () => areaPerHead(metres(0), metres(3)), 'SPACING_OUT_OF_DOMAIN'],
    ['a triangle of nothing', () => triangularRowSpacing(metres(-1)), 'SPACING_OUT_OF_DOMAIN'],
    ['an arc beyond the circle', () => fullCircleFlow(litresPerMinute(4), degrees(400)), 'ARC_OUT_OF_DOMAIN'],
    ['half a head', () => flowOfHeads([{ count: 0.5, flow: litresPerMinute(4) }]), 'HEADS_OUT_OF_DOMAIN'],
    ['a test of no time', () => precipitationRateFromDepth(millimetres(3), minutes(0)), 'CATCH_TEST_OUT_OF_DOMAIN'],
    ['a can without a mouth', () => precipitationRateFromCans(litres(1), minutes(5), squareMetres(0)), 'CATCH_TEST_OUT_OF_DOMAIN'],
    [
      'two spacings below zero',
      () => precipitationRateOfDripGrid(litresPerMinute(1), metres(-1), metres(-1)),
      'PRECIPITATION_RATE_OUT_OF_DOMAIN',
    ],
    ['a density below zero', () => precipitationRateOfEmitterDensity(litresPerMinute(1), -1), 'PRECIPITATION_RATE_OUT_OF_DOMAIN'],
  ])('refuses %s by code', (_, deed, code) => {
    expect(deed).toThrow(expect.objectContaining({ code }));
  });
});
