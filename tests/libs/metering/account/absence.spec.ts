import type { AccountInput } from '@rillbook/metering/account/account-input.js';
import { computeMonthAccount } from '@rillbook/metering/account/compute-month-account.js';
import { describe, expect, it } from 'vitest';
import { aController, aFact, aMeter, anInterval, aProgram, aProperty, aZone, weather } from '../a-property.js';

const account = (changes: Partial<AccountInput> = {}) => computeMonthAccount(aProperty(changes));
const left = (effectiveAt: string) => [aController([aFact([aProgram({ 1: 30 })], { effectiveAt })])];

describe('gaps in data', () => {
  it('settings that begin within the first fifth are filled in proportion to need, marked, and less sure', () => {
    const { property, zones, notes } = account({ controllers: left('2026-06-07T00:00') });
    expect(property.programmed.litres).toBeCloseTo(18_000, 6);
    expect(property.programmed.estimatedShare).toBeCloseTo(0.2, 9);
    expect(property.programmed.sdLitres ?? 0).toBeGreaterThan(account().property.programmed.sdLitres ?? 0);
    expect(zones[0]?.minutes).toBe(24 * 30);
    expect(notes).toContainEqual({ code: 'volume-estimated', details: { volume: 'programmed', share: expect.closeTo(0.2, 9) } });
  });

  it('beyond a fifth the volume is absent with its reason, never zero, and the gaps with it', () => {
    const { property, zones } = account({ controllers: left('2026-06-08T00:00') });
    expect(property.programmed).toEqual({
      litres: null,
      sdLitres: null,
      estimatedShare: 0,
      reason: { code: 'settings-not-known', details: { zones: ['z1'], controllerId: 'c1', missingShare: expect.closeTo(7 / 30, 9) } },
    });
    expect(property.unexplainedGap).toMatchObject({
      litres: null,
      reason: { code: 'volume-absent', details: { volumes: ['programmed'] } },
    });
    expect(property.settingsGap).toMatchObject({ litres: null, overLitres: null, underLitres: null });
    expect(property.meteredOverNeeded.litres).toBeCloseTo(6000, 6);
    expect(zones[0]).toMatchObject({ neededLitres: expect.closeTo(15_000, 6), programmedLitres: null, overLitres: null, runs: null });
  });

  it('planned settings are no settings', () => {
    const controllers = [aController([aFact([aProgram({ 1: 30 })], { record: 'planned' })])];
    expect(account({ controllers }).property.programmed.reason?.code).toBe('settings-not-known');
  });

  it('a controller that computes its own run times, over plants whose need is not known, has its own reason', () => {
    const controllers = [aController([aFact([], { state: 'weather' })])];
    expect(account({ controllers, days: [] }).property.programmed.reason?.code).toBe('settings-from-weather');
  });

  it('a controller that is off programs zero, which is known', () => {
    const controllers = [aController([aFact([], { state: 'off' })])];
    expect(account({ controllers }).property.programmed).toMatchObject({ litres: 0, reason: null });
  });
});

describe('gaps in weather and readings', () => {
  it('missing weather is filled up to a fifth, for need and allowance alike', () => {
    const holes = (to: string) =>
      weather('2026-03-03', '2026-06-30', (date) => (date >= '2026-06-20' && date <= to ? { etoMm: null, rainMm: null } : {}));
    const { property } = account({ days: holes('2026-06-25') });
    expect(property.needed.litres).toBeCloseTo(15_000, 6);
    expect(property.needed.estimatedShare).toBeCloseTo(0.2, 9);
    expect(property.allowed.estimatedShare).toBeCloseTo(0.2, 9);
    const absent = account({ days: holes('2026-06-26') }).property;
    expect(absent.needed.reason).toEqual({ code: 'weather-missing', details: { missingDays: 7, days: 30, zones: ['z1'] } });
    expect(absent.allowed.reason?.code).toBe('weather-missing');
    expect(absent.programmed.litres).toBeCloseTo(18_000, 6);
  });

  it('rain that nobody measured is not zero rain', () => {
    const dry = weather('2026-03-03', '2026-06-30', () => ({ rainMm: null }));
    const { property } = account({ days: dry });
    expect(property.needed.reason?.code).toBe('weather-missing');
    expect(property.allowed.reason).toBeNull();
  });

  it('a filled day whose rain nobody measured counts by its evapotranspiration, and the account says so', () => {
    const filled = (date: string) => date >= '2026-06-10' && date <= '2026-06-12';
    const days = weather('2026-03-03', '2026-06-30', (date) =>
      filled(date) ? { etoMm: 9, filledFrom: 'neighbour', rainMm: date === '2026-06-12' ? 0 : null } : {},
    );
    const { property, notes } = account({ days });
    // No rain fell on the 28 others: each needs its evapotranspiration, and so do the two of unknown rain.
    expect(property.needed.litres).toBeCloseTo((27 * 5 + 3 * 9) * 100, 6);
    expect(property.needed.estimatedShare).toBeCloseTo((3 * 9) / (27 * 5 + 3 * 9), 9);
    expect(notes).toContainEqual({ code: 'weather-filled', details: { neighbourDays: 1, normalDays: 0 } });
    expect(notes).toContainEqual({ code: 'weather-rain-not-known', details: { days: 2 } });
  });

  it('is less sure by the rain that a day may have had, and by a neighbour rain that may be off', () => {
    const on = (date: string) => date === '2026-06-10';
    const sdOf = (values: object) => {
      const { property } = account({ days: weather('2026-03-03', '2026-06-30', (date) => (on(date) ? values : {})) });
      return property.needed.sdLitres ?? Number.NaN;
    };
    const unknown = { rainMm: null };
    expect(sdOf({ ...unknown, rainSdMm: 6 })).toBeGreaterThan(1.02 * sdOf({ ...unknown, rainSdMm: 0 }));
    // In a dry month each millimetre of rain, had it fallen, would have spared one: 3 mm on 100 m2 are 300 L beside the rest.
    expect(sdOf({ rainSdMm: 3 })).toBeCloseTo(Math.hypot(sdOf({}), 300), 6);
    expect(sdOf({ rainMm: 0, rainSdMm: 0 })).toBe(sdOf({}));
    expect(() => account({ days: weather('2026-03-03', '2026-06-30', () => ({ rainSdMm: -1 })) })).toThrowError(
      expect.objectContaining({ code: 'WEATHER_DAY_INVALID' }),
    );
  });

  it('names the days whose rain is a neighbour’s', () => {
    const days = weather('2026-03-03', '2026-06-30', (date) => (date > '2026-06-27' ? { rainFrom: 'neighbour', rainSdMm: 1 } : {}));
    expect(account({ days }).notes).toContainEqual({ code: 'weather-rain-from-neighbour', details: { days: 3 } });
    expect(account().notes.some(({ code }) => code === 'weather-rain-from-neighbour')).toBe(false);
  });

  it('readings that stop early are filled up to a fifth by need', () => {
    const until = (to: string, litres: number) => account({ meters: [aMeter([anInterval('2026-06-01', to, litres)])] });
    expect(until('2026-06-25', 16_800).property.metered).toMatchObject({
      litres: expect.closeTo(21_000, 6),
      estimatedShare: expect.closeTo(0.2, 9),
    });
    expect(until('2026-06-25', 16_800).meters[0]?.meteredThrough).toBe('2026-06-24');
    expect(until('2026-06-20', 12_000).property.metered).toMatchObject({ litres: null, reason: { code: 'readings-missing' } });
    expect(account({ meters: [aMeter([])] }).property.metered.reason).toEqual({
      code: 'readings-missing',
      details: { meters: ['m1'], missingShare: 1 },
    });
  });

  it('a zone without flow makes the program absent; other zones keep their own', () => {
    const zones = [aZone({ flowLPerMin: null }), aZone({ id: 'z2', station: 2 })];
    const { property, zones: lines } = account({ zones, controllers: [aController([aFact([aProgram({ 1: 30, 2: 30 })])])] });
    expect(property.programmed.reason).toEqual({ code: 'flow-not-known', details: { zones: ['z1'] } });
    expect(lines[0]).toMatchObject({ programmedLitres: null, minutes: 900, runs: 30 });
    expect(lines[1]).toMatchObject({ overLitres: expect.closeTo(3000, 6) });
  });

  it('no allowance, no meter, no zones, no controller: each with its word', () => {
    expect(account({ allowance: null }).property.allowed.reason?.code).toBe('no-allowance');
    expect(account({ meters: [] }).property.metered.reason?.code).toBe('no-meter');
    expect(account({ meters: [] }).property.needed.litres).toBeCloseTo(15_000, 6);
    expect(account({ zones: [] }).property.needed.reason?.code).toBe('no-zones');
    expect(account({ zones: [aZone({ controllerId: null, station: null })] }).property.programmed.reason?.code).toBe('no-controller');
  });
});

const two = [
  aMeter([anInterval('2026-06-01', '2026-07-01', 21_000)]),
  aMeter([anInterval('2026-06-01', '2026-07-01', 4000)], { id: 'm2' }),
];
const both = [aController([aFact([aProgram({ 1: 30, 2: 30 })])])];

describe('scope', () => {
  it('one meter needs no assignment', () => {
    expect(account().meters[0]?.unexplainedGap.litres).toBeCloseTo(3000, 6);
  });

  it('accounts are per meter and the property sums them', () => {
    const zones = [aZone({ meterId: 'm1' }), aZone({ id: 'z2', station: 2, meterId: 'm2', areaM2: 50 })];
    const { property, meters } = account({
      zones,
      meters: two,
      controllers: both,
      allowance: { from: 'ordinance', etaf: 0.8, specialLandscapeAreaM2: 30 },
    });
    expect(meters.map(({ unexplainedGap }) => unexplainedGap.litres)).toEqual([expect.closeTo(3000, 6), expect.closeTo(-14_000, 6)]);
    for (const volume of ['allowed', 'needed', 'programmed', 'metered'] as const) {
      expect(meters.reduce((sum, meter) => sum + (meter[volume].litres ?? Number.NaN), 0)).toBeCloseTo(property[volume].litres ?? 0, 6);
    }
  });

  it('zones not assigned to one of several meters give need and program, and leave the gaps with the meter absent', () => {
    const zones = [aZone({ meterId: 'm1' }), aZone({ id: 'z2', station: 2 })];
    const { property, meters } = account({ zones, meters: two, controllers: both });
    expect(property.needed.litres).toBeCloseTo(30_000, 6);
    expect(property.programmed.litres).toBeCloseTo(36_000, 6);
    expect(property.settingsGap.litres).toBeCloseTo(6000, 6);
    const notAssigned = { code: 'zones-not-assigned', details: { zones: ['z2'] } };
    for (const gap of ['unexplainedGap', 'meteredOverAllowed', 'meteredOverNeeded'] as const)
      expect(property[gap].reason).toEqual(notAssigned);
    expect(meters[0]?.unexplainedGap.reason).toEqual(notAssigned);
    expect(meters[0]?.metered.litres).toBeCloseTo(21_000, 6);
  });
});

describe('outside the identity', () => {
  it('unmetered and hand-watered zones have lines of their own and stay out of the identity', () => {
    const hand = aZone({ id: 'z3', handWatered: true, handLitresPerWeek: 70, controllerId: null, station: null });
    const zones = [aZone(), aZone({ id: 'z2', station: 2, meterId: 'none' }), hand];
    const { property, zones: lines } = account({ zones, controllers: both });
    expect(property.needed.litres).toBeCloseTo(15_000, 6);
    expect(property.programmed.litres).toBeCloseTo(18_000, 6);
    expect(lines.map(({ scope }) => scope)).toEqual(['metered', 'unmetered', 'hand']);
    expect(lines[1]).toMatchObject({ neededLitres: expect.closeTo(15_000, 6), programmedLitres: expect.closeTo(18_000, 6) });
    expect(lines[2]).toMatchObject({ programmedLitres: expect.closeTo(300, 6), underLitres: expect.closeTo(14_700, 6), minutes: null });
    expect(account({ zones: [aZone(), { ...hand, handLitresPerWeek: null }] }).zones[1]?.reason?.code).toBe('hand-volume-not-known');
  });

  it('a meter without zones is not compared with the need of others', () => {
    const { property, meters } = account({ zones: [aZone({ meterId: 'm1' })], meters: two });
    expect(property.meteredOverNeeded.reason).toEqual({ code: 'meter-without-zones', details: { meters: ['m2'] } });
    expect(meters[1]?.needed.reason?.code).toBe('no-zones');
    expect(meters[0]?.meteredOverNeeded.litres).toBeCloseTo(6000, 6);
  });

  it('a contract is for the property, not for one of its meters', () => {
    const zones = [aZone({ meterId: 'm1' }), aZone({ id: 'z2', station: 2, meterId: 'm2' })];
    const { property, meters } = account({
      zones,
      meters: two,
      controllers: both,
      allowance: { from: 'contract', litresPerMonth: new Array<number>(12).fill(20_000) },
    });
    expect(property.meteredOverAllowed.litres).toBeCloseTo(5000, 6);
    expect(meters[0]?.allowed.reason?.code).toBe('allowance-is-for-the-property');
  });
});
