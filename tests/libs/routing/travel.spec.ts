import { driveInOrder } from '@rillbook/routing/travel/drive-in-order.js';
import { greatCircleDistance } from '@rillbook/routing/travel/great-circle-distance.js';
import { straightLineTravel } from '@rillbook/routing/travel/straight-line-travel.js';
import { givenTravel } from '@rillbook/routing/travel/travel-table.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { refusalOf } from '../refusal-of.js';

const place = fc.record({
  latitude: fc.double({ min: -90, max: 90, noNaN: true }),
  longitude: fc.double({ min: -180, max: 180, noNaN: true }),
});

describe('distance over the ground', () => {
  it('is that of a worked example', () => {
    // Nashville to Los Angeles airports: 2,887.26 km on a sphere of 6,372.8 km. Rosetta Code, task 'Haversine formula' (from memory).
    const metres = greatCircleDistance({ latitude: 36.12, longitude: -86.67 }, { latitude: 33.94, longitude: -118.4 });
    expect((metres / 6371.0087714) * 6.3728).toBeCloseTo(2887.26, 2);
  });

  it('from the equator to the pole is a quarter of the meridian of a sphere', () => {
    // Pi / 2 times the mean radius R1 = 6,371,008.7714 m of GRS 80 (Moritz 2000).
    expect(greatCircleDistance({ latitude: 0, longitude: 17 }, { latitude: 90, longitude: -55 })).toBeCloseTo(
      (Math.PI / 2) * 6371008.7714,
      3,
    );
  });

  it('is the same both ways, none to itself, and never shorter by a third place', () => {
    fc.assert(
      fc.property(place, place, place, (a, b, c) => {
        expect(greatCircleDistance(a, a)).toBe(0);
        expect(greatCircleDistance(a, b)).toBeCloseTo(greatCircleDistance(b, a), 3);
        expect(greatCircleDistance(a, c)).toBeLessThanOrEqual(greatCircleDistance(a, b) + greatCircleDistance(b, c) + 0.5);
      }),
    );
  });
});

describe('travel between places', () => {
  const places = [
    { latitude: 38, longitude: -120 },
    { latitude: 38.1, longitude: -120 },
  ];

  it('is the straight line times its factor, at the speed, and the time that each drive takes besides', () => {
    const { seconds, metres } = straightLineTravel(places, { factor: 1.5, kilometresPerHour: 36, perDriveS: 60 });
    const line = greatCircleDistance(places[0]!, places[1]!);
    expect(metres?.[1]).toBeCloseTo(1.5 * line, 6);
    expect(seconds[1]).toBeCloseTo((1.5 * line) / 10 + 60, 6);
    expect([...seconds].filter((one) => one === 0)).toHaveLength(2);
  });

  it('takes no factor below the straight line', () => {
    expect(refusalOf(() => straightLineTravel(places, { factor: 0.9, kilometresPerHour: 40, perDriveS: 0 }))[0]).toBe(
      'STRAIGHT_LINE_OUT_OF_DOMAIN',
    );
  });

  it('is taken from a given table only when it is whole', () => {
    const table = givenTravel([
      [0, 5],
      [7, 0],
    ]);
    expect(driveInOrder(table, [0, 1, 0])).toBe(12);
    expect(refusalOf(() => givenTravel([[0, 5], [7]]))).toEqual([
      'TRAVEL_TABLE_OUT_OF_DOMAIN',
      { what: 'seconds', from: 1, values: 1, size: 2 },
    ]);
    const holed = refusalOf(() =>
      givenTravel([
        [0, null],
        [7, 0],
      ]),
    );
    expect(holed).toEqual(['TRAVEL_TABLE_OUT_OF_DOMAIN', { what: 'seconds', from: 0, to: 1, value: null }]);
  });
});
