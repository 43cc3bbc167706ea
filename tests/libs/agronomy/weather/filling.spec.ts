import { monthlyNormals } from '@rillbook/agronomy/weather/filling/monthly-normals.js';
import { distanceKm, neighbourStation, type StationPlace } from '@rillbook/agronomy/weather/filling/neighbour-station.js';
import { neighbourTransfer } from '@rillbook/agronomy/weather/filling/neighbour-transfer.js';
import { degrees } from '@rillbook/units/angle.js';
import { metres, millimetres } from '@rillbook/units/length.js';
import { celsius } from '@rillbook/units/temperature.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { swing } from './station-record.js';

const place = (latitude: number, longitude: number, elevation: number | null): StationPlace => ({
  latitude: degrees(latitude),
  longitude: degrees(longitude),
  elevation: elevation === null ? null : metres(elevation),
});

describe('the neighbour', () => {
  it('is measured along the ground', () => {
    // One degree of a meridian is 1/360 of a great circle of radius 6371 km.
    expect(distanceKm(place(38, -121, 0), place(39, -121, 0))).toBeCloseTo((2 * Math.PI * 6371) / 360, 6);
    expect(distanceKm(place(60, 10, 0), place(60, 11, 0))).toBeCloseTo(55.6, 1);
    expect(distanceKm(place(38, -121, 0), place(38, -121, 500))).toBe(0);
  });

  it('is the nearest within 50 km and 300 m of height', () => {
    const here = place(38, -121, 100);
    const [near, nearer, high, far, unknown] = [
      place(38.3, -121, 100),
      place(38.2, -121, 400),
      place(38.1, -121, 401),
      place(38.46, -121, 100),
      place(38.05, -121, null),
    ];
    expect(neighbourStation(here, [far, near, high, nearer, unknown])?.neighbour).toBe(nearer);
    expect(neighbourStation(here, [far, high, unknown])).toBeNull();
    expect(neighbourStation(unknown, [near])).toBeNull();
  });
});

describe('the rule that carries a value over', () => {
  const common = Array.from({ length: 30 }, (_, at) => ({ own: 20 + 4 * swing(at), neighbour: 17 + 4 * swing(at) }));

  it('is the difference of the means, and exact where the two differ by nothing else', () => {
    expect(neighbourTransfer(common, 'difference')).toEqual({
      form: 'difference',
      by: expect.closeTo(3, 12),
      residualSd: expect.closeTo(0, 12),
      commonDays: 30,
    });
    const windier = common.map(({ neighbour }) => ({ own: 1.5 * neighbour, neighbour }));
    expect(neighbourTransfer(windier, 'ratio')).toMatchObject({ form: 'ratio', by: expect.closeTo(1.5, 12) });
  });

  it('needs twenty common days, and a neighbour that tells more than the mean', () => {
    expect(neighbourTransfer(common.slice(0, 19), 'difference')).toEqual({ form: null, reason: 'too-few-common-days', commonDays: 19 });
    const strange = common.map(({ own }, at) => ({ own, neighbour: 40 + 9 * swing(3 * at + 1) }));
    expect(neighbourTransfer(strange, 'difference')).toEqual({ form: null, reason: 'too-different', commonDays: 30 });
    const still = common.map(({ own }) => ({ own, neighbour: 0 }));
    expect(neighbourTransfer(still, 'ratio')).toMatchObject({ form: null, reason: 'too-different' });
  });

  it('leaves less than the station varies by itself, wherever it stands', () => {
    const values = fc.double({ min: -10, max: 40, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.record({ own: values, neighbour: values }), { minLength: 20, maxLength: 60 }), (days) => {
        const rule = neighbourTransfer(days, 'difference');
        const mean = days.reduce((sum, { own }) => sum + own, 0) / days.length;
        const spread = Math.sqrt(days.reduce((sum, { own }) => sum + (own - mean) ** 2, 0) / (days.length - 1));
        if (rule.form !== null) expect(rule.residualSd).toBeLessThan(spread);
      }),
    );
  });
});

describe('monthly normals', () => {
  const day = (date: string, eto: number) => ({ date, etoMm: millimetres(eto), relativeSd: 0.08, tmax: celsius(30), tmin: null });
  const july = Array.from({ length: 24 }, (_, at) => day(`2025-07-${String(at + 1).padStart(2, '0')}`, at % 2 ? 5 : 7));

  it('are the mean of the days, with their spread and their own error', () => {
    const normals = monthlyNormals([...july, day('2025-08-01', 9)]);
    expect(normals).toHaveLength(12);
    const spread = Math.sqrt(24 / 23);
    expect(normals[6]).toEqual({
      month: 7,
      days: 24,
      etoMm: 6,
      etoRelativeSd: expect.closeTo(Math.hypot(spread / 6, 0.08), 12),
      tmax: expect.closeTo(30, 12),
      tmin: null,
      reason: null,
    });
  });

  it('are not known of a month with fewer than twenty days, and say so', () => {
    const normals = monthlyNormals(july.slice(0, 19));
    expect(normals[6]).toEqual({ month: 7, days: 19, etoMm: null, etoRelativeSd: null, tmax: null, tmin: null, reason: 'too-few-days' });
    expect(normals.every(({ etoMm }) => etoMm === null)).toBe(true);
  });
});
