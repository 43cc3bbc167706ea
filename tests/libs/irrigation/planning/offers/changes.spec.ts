import { buildGround } from '@rillbook/irrigation/planning/offers/build-ground.js';
import { changesOf, moves } from '@rillbook/irrigation/planning/offers/fitting/changes.js';
import { planGround } from '@rillbook/irrigation/planning/offers/full-program.js';
import { percentVariants } from '@rillbook/irrigation/planning/offers/percent-variants.js';
import { type Assignment, costOf, type Ground, priceIn } from '@rillbook/irrigation/planning/pricing/assignment.js';
import { describe, expect, it } from 'vitest';
import { numbersFrom } from '../../../../support/planning/controllers.mjs';
import { aController, zoneInInches } from '../a-controller.js';

const ZONES = [1, 2, 3, 4];

function aGround(seed: number): Ground {
  const next = numbersFrom(seed);
  const zones = ZONES.map((station) => zoneInInches(station, 0.05 + next() * 0.2, 0.4 + next() * 0.6, { storageDays: 2 + next() * 5 }));
  const controller = aController(zones);
  const input = { ...controller, traits: { ...controller.traits, programs: 3 }, window: { from: 0, until: 240 } };
  return buildGround(input, planGround(input), 127, percentVariants(input)[0]!);
}

/** Two zones in the first program, one alone in the second, one dry; the third program is not used. */
function someWhere(ground: Ground, seed: number): Assignment {
  const next = numbersFrom(seed + 100);
  const chosen = ground.slots.map(({ options }) => options[Math.floor(next() * options.length)]!);
  const slotOf = [0, 0, 1, -1];
  const steps = slotOf.map((slot, zone) => {
    const open = slot < 0 ? [] : [...(chosen[slot]?.zones[zone]?.steps ?? [])];
    return open.find((each) => Number.isFinite(priceIn(ground, zone, slot, chosen[slot]!, each))) ?? 0;
  });
  const stands = slotOf.map((slot, zone) => (steps[zone] ? slot : -1));
  return { options: chosen, patterns: chosen.map(({ days }) => days.patterns[0] ?? null), slotOf: stands, steps };
}

describe('changes of an assignment', () => {
  it.each([1, 2, 3, 4, 5, 6])(
    'cost what the assignment that they make costs more, a program that nobody uses any more told (world %i)',
    (seed) => {
      const ground = aGround(seed);
      const now = someWhere(ground, seed);
      const all = [...changesOf(ground, now, 30), ...moves(ground, now).filter(({ cost }) => Number.isFinite(cost))];
      expect(all.length).toBeGreaterThan(8);
      for (const { cost, made } of all) expect(cost).toBeCloseTo(costOf(ground, made()) - costOf(ground, now), 6);
      // The zone that has a program for itself leaves it, and its days need no key any more.
      const [alone] = now.slotOf.flatMap((slot, zone) => (slot === 1 ? [zone] : []));
      const left = all.filter(({ made }) => alone !== undefined && made().slotOf[alone] !== 1);
      expect(left.length).toBeGreaterThan(0);
    },
  );

  it('come the cheapest first, and none that must not be', () => {
    const ground = aGround(7);
    const costs = changesOf(ground, someWhere(ground, 7), 30).map(({ cost }) => cost);
    expect(costs).toEqual([...costs].sort((a, b) => a - b));
    expect(costs.every(Number.isFinite)).toBe(true);
  });
});
