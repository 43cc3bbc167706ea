import type { AccountInput } from '@rillbook/metering/account/account-input.js';
import { computeMonthAccount } from '@rillbook/metering/account/compute-month-account.js';
import { describe, expect, it } from 'vitest';
import { aMeter, anInterval, aProperty, aZone, weather } from '../a-property.js';

const account = (changes: Partial<AccountInput> = {}) => computeMonthAccount(aProperty(changes));
const meteredOf = (found: ReturnType<typeof account>, id: string) => found.meters.find(({ meterId }) => meterId === id);

// A June that turns hot on the 21st, with a rain on the 11th that keeps thirsty plants from need for days and modest ones for weeks.
const days = weather('2026-03-03', '2026-06-30', (date) => ({
  etoMm: date < '2026-06-21' ? 4 : 7,
  rainMm: date === '2026-06-11' ? 15 : 0,
}));
const thirsty = aZone({ id: 'z1', meterId: 'm1' });
const modest = aZone({ id: 'z2', station: 2, plantFactor: 0.3, meterId: 'm2' });
/** Read until the evening of the 26th. */
const short = (id: string) => aMeter([anInterval('2026-06-01', '2026-06-27', 9000)], { id });
const whole = (id: string) => aMeter([anInterval('2026-06-01', '2026-07-01', 5000)], { id });

describe('days that a meter does not tell', () => {
  it('are filled by what its own zones needed, whatever others have', () => {
    const alone = account({ days, zones: [thirsty], meters: [short('m1')] }).property.metered;
    // 26 days of 4 and 7 mm, 15 of them kept off by the rain, and then four days of 7.
    const [told, left] = [20 * 4 + 6 * 7 - 15, 4 * 7];
    expect(alone.litres).toBeCloseTo(9000 * (1 + left / told), 0);
    // The same where the first four days are missing: 16 days of 4 mm less the rain, and ten of 7.
    const late = account({ days, zones: [thirsty], meters: [aMeter([anInterval('2026-06-05', '2026-07-01', 9000)])] }).property.metered;
    expect(late.litres).toBeCloseTo(9000 * (1 + (4 * 4) / (16 * 4 - 15 + 10 * 7)), 0);
    const two = account({ days, zones: [thirsty, modest], meters: [short('m1'), whole('m2')] });
    expect(meteredOf(two, 'm1')?.metered.litres).toBeCloseTo(alone.litres ?? 0, 6);
    const other = account({ days, zones: [thirsty, modest], meters: [whole('m1'), short('m2')] });
    expect(meteredOf(other, 'm2')?.metered.litres).toBeGreaterThan((alone.litres ?? 0) * 1.02);
  });

  it('are filled by days where nobody knows whose water it is, or its zones’ need', () => {
    const unassigned = account({ days, zones: [{ ...thirsty, meterId: null }, modest], meters: [short('m1'), whole('m2')] });
    expect(meteredOf(unassigned, 'm1')?.metered.litres).toBeCloseTo((9000 * 30) / 26, 6);
    const beside = account({ days, zones: [thirsty, { ...modest, meterId: null }], meters: [short('m1'), whole('m2')] });
    expect(meteredOf(beside, 'm1')?.metered.litres).toBeCloseTo((9000 * 30) / 26, 6);
    const nobody = account({ days, zones: [modest], meters: [short('m1'), whole('m2')] });
    expect(meteredOf(nobody, 'm1')?.metered.litres).toBeCloseTo((9000 * 30) / 26, 6);
  });

  it('end the time through which it is metered, at the first of them', () => {
    const throughOf = (...intervals: Parameters<typeof aMeter>[0][number][]) =>
      account({ meters: [aMeter(intervals)] }).meters[0]?.meteredThrough;
    expect(throughOf(anInterval('2026-06-01', '2026-07-01', 1))).toBe('2026-06-30');
    expect(throughOf(anInterval('2026-06-01', '2026-06-10', 1), anInterval('2026-06-12', '2026-07-01', 1))).toBe('2026-06-09');
    expect(throughOf(anInterval('2026-06-02', '2026-07-01', 1))).toBeNull();
  });
});

describe('what a meter told before the month and after it', () => {
  it('is none of the month’s, and contradicts nothing in it', () => {
    const june = anInterval('2026-06-01', '2026-07-01', 21_000);
    const around = [anInterval('2026-05-01', '2026-06-01', 90_000), anInterval('2026-07-01', '2026-08-01', 90_000)];
    const bills = [
      anInterval('2026-05-01', '2026-06-01', 1, { source: 'bills' }),
      anInterval('2026-07-01', '2026-08-01', 1, { source: 'bills' }),
    ];
    expect(account({ meters: [aMeter([...around, ...bills, june])] })).toEqual(account({ meters: [aMeter([june])] }));
  });

  it.each([
    ['lasts no time', anInterval('2026-06-05', '2026-06-05', 10)],
    ['is no number', anInterval('2026-06-05', '2026-06-06', Number.NaN)],
    ['has a deviation below zero', anInterval('2026-06-05', '2026-06-06', 10, { sdLitres: -1 })],
  ])('is refused where it %s, and which it is', (_, wrong) => {
    expect(() => account({ meters: [aMeter([wrong])] })).toThrow(
      expect.objectContaining({ code: 'USAGE_INTERVAL_OUT_OF_DOMAIN', details: expect.objectContaining({ meterId: 'm1', ...wrong }) }),
    );
  });
});

describe('water by hand', () => {
  const byHand = (handLitresPerWeek: number | null) =>
    account({ zones: [aZone({ handWatered: true, controllerId: null, station: null, handLitresPerWeek })] });

  it('is what is told a week over the days, as surely as it is told', () => {
    // Common practice, no source: volumes by hand are taken to err by three tenths.
    expect(byHand(700).zones[0]).toMatchObject({
      programmedLitres: expect.closeTo(3000, 9),
      programmedSdLitres: expect.closeTo(900, 9),
      runs: null,
      programs: [],
    });
    expect(byHand(0).zones[0]).toMatchObject({ programmedLitres: 0, programmedSdLitres: 0 });
  });

  it('stands on its own line, and is none of what a property that has no other zone is metered', () => {
    expect(byHand(700).property.programmed).toMatchObject({ litres: null, reason: { code: 'no-zones' } });
  });

  it('that nobody told is absent, and says of which zone', () => {
    expect(byHand(null).zones[0]).toMatchObject({
      programmedLitres: null,
      reason: { code: 'hand-volume-not-known', details: { zones: ['z1'] } },
    });
  });

  it.each([-1, Number.NaN, Number.POSITIVE_INFINITY])('of %s litres a week is refused, and whose', (handLitresPerWeek) => {
    expect(() => byHand(handLitresPerWeek)).toThrow(
      expect.objectContaining({ code: 'ZONE_FLOW_OUT_OF_DOMAIN', details: { zoneId: 'z1', handLitresPerWeek } }),
    );
  });
});
