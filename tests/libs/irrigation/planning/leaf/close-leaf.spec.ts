import { closeLeaf } from '@rillbook/irrigation/planning/leaf/close-leaf.js';
import { waysToMeet } from '@rillbook/irrigation/planning/leaf/leaf-problem.js';
import { buildGround } from '@rillbook/irrigation/planning/offers/build-ground.js';
import { planGround } from '@rillbook/irrigation/planning/offers/full-program.js';
import { percentVariants } from '@rillbook/irrigation/planning/offers/percent-variants.js';
import { costOf, type Ground, priceIn, programLimit } from '@rillbook/irrigation/planning/pricing/assignment.js';
import type { SlotOption } from '@rillbook/irrigation/planning/pricing/slots.js';
import { expect, it } from 'vitest';
import { numbersFrom } from '../../../../support/planning/controllers.mjs';
import { aController, noRule, zoneInInches } from '../a-controller.js';

const STEP = 10;
const MOST_STEPS = 6;
const ENOUGH = { mostNodes: 1e6, mostWork: 1e12 };

/** Three zones, two programs, steps of ten minutes and an hour: what does not fit into it has to be shared out. */
function crowded(seed: number): Ground {
  const next = numbersFrom(seed);
  const zones = [1, 2, 3].map((station) =>
    zoneInInches(station, 0.05 + next() * 0.2, 0.4 + next() * 0.6, { storageDays: 1.5 + next() * 4 }),
  );
  const controller = aController(zones);
  const traits = { ...controller.traits, programs: 2, startsPerProgram: 2, minuteStep: STEP, maxMinutes: STEP * MOST_STEPS };
  const input = { ...controller, traits, rules: [{ ...noRule, daysPerWeek: 3 }], window: { from: 0, until: 60 } };
  return buildGround(input, planGround(input), 127, percentVariants(input)[0]!);
}

/** The cheapest of all ways to give each zone a program and steps, or neither, that keep the programs' minutes and those of their common days. */
function cheapestOfAll(ground: Ground, options: readonly SlotOption[]): number {
  const presses = ground.frame.weights.keyPress * options.reduce((sum, option) => sum + option.presses, 0);
  const perStart = (slot: number) => STEP * (options[slot]?.starts ?? 0);
  let best = Number.POSITIVE_INFINITY;
  for (const { together } of waysToMeet(ground, options) ?? []) {
    const place = (zone: number, minutes: readonly number[], cost: number): void => {
      if (minutes.some((each, slot) => each > programLimit(ground, options[slot]!))) return;
      if ([...together].some((set) => minutes.reduce((sum, each, slot) => sum + ((set >> slot) & 1 ? each : 0), 0) > ground.perDay)) return;
      if (zone === ground.zones.length) {
        best = Math.min(best, cost);
        return;
      }
      place(zone + 1, minutes, cost + (ground.dry[zone] as number));
      options.forEach((option, slot) => {
        for (let steps = 1; steps <= MOST_STEPS; steps += 1) {
          const price = priceIn(ground, zone, slot, option, steps);
          const more = minutes.map((each, at) => each + (at === slot ? steps * perStart(slot) : 0));
          if (price < Number.POSITIVE_INFINITY) place(zone + 1, more, cost + price);
        }
      });
    };
    place(0, [0, 0], presses);
  }
  return best;
}

it.each([1, 2, 3, 4])('a leaf looked through holds nothing cheaper than what is found, and that is found (world %i)', (seed) => {
  const ground = crowded(seed);
  const next = numbersFrom(seed + 100);
  const oneOf = (slot: number) => {
    const { options } = ground.slots[slot]!;
    return options[Math.floor(next() * options.length)]!;
  };
  for (let leaf = 0; leaf < 12; leaf += 1) {
    const options = [oneOf(0), oneOf(1)];
    const best = cheapestOfAll(ground, options);
    const { bound, better } = closeLeaf(ground, options, { known: 1.5 * best, gap: 1e-9, ...ENOUGH });
    expect(better).not.toBeNull();
    // A program that no zone is given costs no keys after all.
    expect(better!.cost).toBeLessThanOrEqual(best + 1e-6);
    expect(costOf(ground, better!.assignment)).toBe(better!.cost);
    expect(bound).toBeLessThanOrEqual(best + 1e-6);
    expect(bound).toBeGreaterThan(0.999 * best);
    // Where the best is known already nothing betters it.
    expect(closeLeaf(ground, options, { known: best - 1e-6, gap: 1e-9, ...ENOUGH }).better).toBeNull();
  }
});
