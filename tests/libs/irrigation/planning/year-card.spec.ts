import { yearCard } from '@rillbook/irrigation/planning/offers/year-card.js';
import { describe, expect, it } from 'vitest';
import { aController, noRule, zoneInInches } from './a-controller.js';

/** Inches a day of a warm dry place, invented. */
const NEEDS = [0, 0.03, 0.08, 0.14, 0.2, 0.24, 0.25, 0.22, 0.16, 0.09, 0.03, 0];
const year = (more: Parameters<typeof aController>[1] = {}) =>
  NEEDS.map((need, at) =>
    aController([zoneInInches(1, need, 1, { storageDays: 3 })], { month: `2026-${String(at + 1).padStart(2, '0')}`, ...more }),
  );

describe("a year's card", () => {
  it('enters the thirstiest month once, and turns the percent by the need of the others', () => {
    const card = yearCard(year());
    expect(card?.thirstiest).toBe('2026-07');
    const percents = card?.months.map(({ offer, isOff }) => (isOff ? 0 : (offer?.programs[0]?.adjustPercent ?? null))) ?? [];
    expect(percents[6]).toBe(100);
    NEEDS.forEach((need, at) => {
      // To the step of five percent, and what a whole minute of the run makes of it.
      expect(Math.abs((percents[at] as number) - (100 * need) / 0.25)).toBeLessThanOrEqual(7.5);
    });
    expect(card?.months.map(({ isOff }) => isOff)).toEqual(NEEDS.map((need) => need === 0));
  });

  it("keeps each month's own rules: other days where a winter rule asks for them", () => {
    const winter = { ...noRule, daysPerWeek: 1, effectiveFrom: '2026-11-01', effectiveUntil: '2026-11-30' };
    const november = yearCard(year({ rules: [winter] }))?.months[10];
    expect(november?.offer?.judgement.breaches).toEqual([]);
    expect(november?.offer?.programs[0]?.days).toMatchObject({ weekdays: { length: 1 } });
  });

  it("leaves the timer's own table of percents out of account: the card is what is written into it", () => {
    const table = year().map((input) => ({
      ...input,
      traits: { ...input.traits, monthlyAdjustPercent: NEEDS.map(() => 50) },
    }));
    expect(yearCard(table)?.months[6]?.offer?.programs).toEqual(yearCard(year())?.months[6]?.offer?.programs);
    expect(yearCard([])).toBeNull();
  });

  it('asks for fewer days in a month to which percents alone give far more than is needed', () => {
    // The roots hold 0.75 in; the timer turns by halves only.
    const { traits } = aController([], {});
    const months = year({ traits: { ...traits, adjustStepPercent: 50, maxAdjustPercent: 100 } }).map((input, at) => ({
      ...input,
      zones: input.zones.map((zone) => ({ ...zone, storageDays: Math.floor(0.75 / Math.max(NEEDS[at] ?? 0, 0.01)) })),
    }));
    const card = yearCard(months);
    const november = card?.months[10];
    expect(november).toMatchObject({ isOff: false, offer: { kind: 'percent and days', judgement: { unmetLitres: 0 } } });
    expect(november?.offer?.judgement.wastedLitres).toBeLessThan(0.25 * (november?.neededLitres ?? 0));
    expect(card?.months[7]).toMatchObject({ offer: { programs: [{ days: card?.programs[0]?.days }] } });
  });
});
