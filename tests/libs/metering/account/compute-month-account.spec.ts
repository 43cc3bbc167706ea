import { computeMonthAccount } from '@rillbook/metering/account/compute-month-account.js';
import type { AccountInput } from '@rillbook/metering/account/account-input.js';
import { describe, expect, it } from 'vitest';
import { aController, aFact, aMeter, anInterval, aProgram, aProperty, aZone, weather } from '../a-property.js';

const account = (changes: Partial<AccountInput> = {}) => computeMonthAccount(aProperty(changes));

describe('a whole month', () => {
  it('has the four volumes of the definition', () => {
    const { property, daysCovered, daysInMonth, throughDate } = account();
    expect([daysCovered, daysInMonth, throughDate]).toEqual([30, 30, '2026-06-30']);
    expect(property.needed.litres).toBeCloseTo(15_000, 6);
    expect(property.programmed.litres).toBeCloseTo(18_000, 6);
    expect(property.metered.litres).toBeCloseTo(21_000, 6);
    // 150 mm on 100 m2 at the ordinance's 0.62 gal per inch and square foot, ETAF 0.8.
    expect(property.allowed.litres).toBeCloseTo((0.8 * 15_000 * 0.62) / 0.623377, 1);
    expect(property.needed.reason).toBeNull();
  });

  it('has the three gaps, and the plain question', () => {
    const { property } = account();
    expect(property.unexplainedGap.litres).toBeCloseTo(3000, 6);
    expect(property.settingsGap.litres).toBeCloseTo(3000, 6);
    expect(property.settingsGap.overLitres).toBeCloseTo(3000, 6);
    expect(property.settingsGap.underLitres).toBe(0);
    expect(property.meteredOverNeeded.litres).toBeCloseTo(6000, 6);
    expect(property.meteredOverAllowed.litres).toBeCloseTo(21_000 - (property.allowed.litres ?? 0), 6);
  });

  it('grosses need up by uniformity and leaching', () => {
    const { property } = account({ zones: [aZone({ duLq: 0.65, leachingFraction: 0.1 })] });
    expect(property.needed.litres).toBeCloseTo(15_000 / 0.79 / 0.9, 6);
  });

  it('counts density and shade beside the plant factor', () => {
    expect(account({ zones: [aZone({ plantFactor: 0.5, density: 0.8, shade: 0.5 })] }).property.needed.litres).toBeCloseTo(3000, 6);
  });

  it('keeps over and under apart: a drowned zone never hides a thirsty one', () => {
    const zones = [aZone(), aZone({ id: 'z2', station: 2 })];
    const { property, controllers } = account({ zones, controllers: [aController([aFact([aProgram({ 1: 40, 2: 10 })])])] });
    expect(property.settingsGap).toMatchObject({
      litres: expect.closeTo(0, 6),
      overLitres: expect.closeTo(9000, 6),
      underLitres: expect.closeTo(9000, 6),
    });
    expect(controllers[0]).toMatchObject({ overZoneIds: ['z1'], underZoneIds: ['z2'], over: { litres: expect.closeTo(9000, 6) } });
  });

  it('tells runs, minutes and programs of each zone', () => {
    expect(account().zones[0]).toMatchObject({ runs: 30, minutes: 900, programs: ['A'], scope: 'metered', meterId: 'm1', reason: null });
  });
});

describe('rain', () => {
  it('is stored and carried into the month; a trace is not counted', () => {
    // 12 mm on 31 May take D from 20 + 5 mm down to 13: the first 7 mm of June are free. A millimetre is 0.2 ETo and no more: a trace.
    const wet = weather('2026-03-03', '2026-06-30', (date) => ({ rainMm: date === '2026-05-31' ? 12 : date === '2026-06-20' ? 1 : 0 }));
    expect(account({ days: wet }).property.needed.litres).toBeCloseTo(15_000 - 700, 6);
    const drop = weather('2026-03-03', '2026-06-30', (date) => ({ rainMm: date === '2026-06-20' ? 1.01 : 0 }));
    expect(account({ days: drop }).property.needed.litres).toBeCloseTo(15_000 - 101, 6);
  });

  it('counts only as far as the root zone has room', () => {
    const flood = weather('2026-03-03', '2026-06-30', (date) => ({ rainMm: date === '2026-06-20' ? 200 : 0 }));
    // D was 20 and the day takes 5: 25 mm fit, so that day and the next four need nothing.
    expect(account({ days: flood }).property.needed.litres).toBeCloseTo(15_000 - 2500, 6);
  });
});

describe('a running month', () => {
  it('covers the same days with all four volumes, the allowance to date', () => {
    const meters = [aMeter([anInterval('2026-06-01', '2026-06-11', 7000)])];
    const { property, daysCovered, throughDate } = account({ through: '2026-06-10', meters });
    expect([daysCovered, throughDate]).toEqual([10, '2026-06-10']);
    expect(property.needed.litres).toBeCloseTo(5000, 6);
    expect(property.programmed.litres).toBeCloseTo(6000, 6);
    expect(property.metered.litres).toBeCloseTo(7000, 6);
    expect(property.allowed.litres).toBeCloseTo((account().property.allowed.litres ?? 0) / 3, 6);
  });

  it('takes the contract by days', () => {
    const litresPerMonth = [0, 0, 0, 0, 0, 9000, 0, 0, 0, 0, 0, 0];
    const { property } = account({ through: '2026-06-10', allowance: { from: 'contract', litresPerMonth } });
    expect(property.allowed).toMatchObject({ litres: 3000, sdLitres: 0 });
  });

  it.each([null, '2026-05-31'])('with no complete day (%s) has nothing, and says so', (through) => {
    const none = account({ through });
    expect(none).toMatchObject({ throughDate: null, daysCovered: 0 });
    for (const volume of ['allowed', 'needed', 'programmed', 'metered'] as const) {
      expect(none.property[volume]).toMatchObject({ litres: null, reason: { code: 'no-complete-day' } });
    }
    expect(none.zones[0]).toMatchObject({ neededLitres: null, reason: { code: 'no-complete-day' } });
  });
});

describe('a mixed meter', () => {
  const mixed = (changes: object) => [aMeter([anInterval('2026-06-01', '2026-07-01', 21_000)], { kind: 'mixed', ...changes })];

  it('is less the stated indoor use, else the winter mean, else absent', () => {
    expect(account({ meters: mixed({ indoorLitresPerDay: 100, winterLitresPerDay: 300 }) }).property.metered.litres).toBeCloseTo(18_000, 6);
    expect(account({ meters: mixed({ winterLitresPerDay: 300 }) }).property.metered.litres).toBeCloseTo(12_000, 6);
    expect(account({ meters: mixed({}) }).property.metered).toMatchObject({
      litres: null,
      reason: { code: 'indoor-not-known', details: { meters: ['m1'] } },
    });
  });

  it('is never clipped at zero, and surer where indoor use is small', () => {
    expect(account({ meters: mixed({ indoorLitresPerDay: 1000 }) }).property.metered.litres).toBeCloseTo(-9000, 6);
    const sd = (indoorLitresPerDay: number) => account({ meters: mixed({ indoorLitresPerDay }) }).property.metered.sdLitres ?? 0;
    expect(sd(500)).toBeGreaterThan(sd(100));
  });
});

describe('bills across the month', () => {
  it('are apportioned by evapotranspiration', () => {
    const days = weather('2026-03-03', '2026-06-30', (date) => ({ etoMm: date < '2026-06-01' ? 2 : 6 }));
    const meters = [
      aMeter([anInterval('2026-05-17', '2026-06-16', 12_000, { source: 'bills' }), anInterval('2026-06-16', '2026-07-01', 9000)]),
    ];
    expect(account({ days, meters }).property.metered.litres).toBeCloseTo(9000 + 9000, 6);
  });

  it('are said to contradict readings of the same time', () => {
    const readings = [anInterval('2026-06-01', '2026-06-16', 10_000), anInterval('2026-06-16', '2026-07-01', 11_000)];
    const { property, notes } = account({
      meters: [aMeter([...readings, anInterval('2026-06-01', '2026-07-01', 40_000, { source: 'bills' })])],
    });
    expect(property.metered.litres).toBeCloseTo(21_000, 6);
    expect(notes).toContainEqual({
      code: 'sources-contradict',
      details: {
        meterId: 'm1',
        from: '2026-06-01',
        until: '2026-06-30',
        source: 'bills',
        litres: 40_000,
        betterSource: 'readings',
        betterLitres: 21_000,
      },
    });
  });
});

describe('what the account says of itself', () => {
  it('weather that starts later', () => {
    const { notes, property } = account({ days: weather('2026-05-22', '2026-06-30') });
    expect(property.needed.litres).toBeCloseTo(15_000, 6);
    expect(notes).toContainEqual({ code: 'weather-starts-later', details: { from: '2026-05-22', daysBefore: 10, daysWanted: 90 } });
    expect(account().notes).toEqual([]);
  });

  it('weather that began long before and has a hole before the month, and nothing of a month that has none', () => {
    const codes = (days: AccountInput['days']) => account({ days }).notes.filter(({ code }) => code.startsWith('weather'));
    const before = weather('2025-12-01', '2026-02-20');
    expect(codes([...before, ...weather('2026-05-22', '2026-06-30')])).toEqual([
      { code: 'weather-missing-before-month', details: { days: 80 } },
    ]);
    expect(codes(before)).toEqual([]);
    expect(codes(weather('2026-03-10', '2026-05-10'))).toEqual([]);
    expect(codes(weather('2026-06-01', '2026-06-30'))).toEqual([
      { code: 'weather-starts-later', details: { from: '2026-06-01', daysBefore: 0, daysWanted: 90 } },
    ]);
  });

  it('inputs that are assumed, and that they widen the uncertainty', () => {
    const assumed = account({ zones: [aZone({ assumed: ['plantFactor', 'duLq'] })] });
    expect(assumed.notes).toContainEqual({ code: 'input-assumed', details: { zoneId: 'z1', input: 'plantFactor' } });
    expect(assumed.property.needed.sdLitres ?? 0).toBeGreaterThan(account().property.needed.sdLitres ?? 0);
  });

  it('a special landscape area larger than what is irrigated', () => {
    const capped = account({ allowance: { from: 'ordinance', etaf: 0.5, specialLandscapeAreaM2: 500 } });
    expect(capped.notes).toContainEqual({
      code: 'special-landscape-area-capped',
      details: { specialLandscapeAreaM2: 500, irrigatedAreaM2: 100 },
    });
    expect(capped.property.allowed.litres).toBeCloseTo((15_000 * 0.62) / 0.623377, 1);
  });
});

describe('impossible input', () => {
  it.each([
    [{ zones: [aZone({ areaM2: 0 })] }, 'ZONE_AREA_OUT_OF_DOMAIN'],
    [{ zones: [aZone({ meterId: 'm9' })] }, 'ZONE_METER_UNKNOWN'],
    [{ zones: [aZone({ controllerId: 'c9' })] }, 'ZONE_CONTROLLER_UNKNOWN'],
    [{ zones: [aZone({ flowLPerMin: -1 })] }, 'ZONE_FLOW_OUT_OF_DOMAIN'],
    [{ zones: [aZone({ duLq: 0 })] }, 'UNIFORMITY_OUT_OF_DOMAIN'],
    [{ days: weather('2026-05-01', '2026-06-30', () => ({ rainMm: -1 })) }, 'WEATHER_DAY_INVALID'],
    [{ meters: [aMeter([anInterval('2026-06-30', '2026-06-01', 1)])] }, 'USAGE_INTERVAL_OUT_OF_DOMAIN'],
    [{ month: '2026-6' }, 'MONTH_INVALID'],
  ] as const)('is refused by code (%#)', (changes, code) => {
    expect(() => account(changes as Partial<AccountInput>)).toThrow(expect.objectContaining({ code }));
  });
});
