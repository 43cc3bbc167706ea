import { leafProblem } from '@rillbook/irrigation/planning/leaf/leaf-problem.js';
import { buildGround } from '@rillbook/irrigation/planning/offers/build-ground.js';
import { fullProgram, planGround } from '@rillbook/irrigation/planning/offers/full-program.js';
import { percentVariants } from '@rillbook/irrigation/planning/offers/percent-variants.js';
import { FOR_AN_ANSWER } from '@rillbook/irrigation/planning/search/effort.js';
import { describe, expect, it } from 'vitest';
import { inventedController } from '../../../support/planning/controllers.mjs';
import { aController, noRule, zoneInInches } from './a-controller.js';

const zones = [1, 2, 3, 4].map((station) => zoneInInches(station, 0.1 + station * 0.03, 0.5 + station * 0.2, { storageDays: 1 + station }));
// Hours too short for everything, and several weeks to try.
const crowded = aController(zones, { rules: [{ ...noRule, daysPerWeek: 3 }], window: { from: 0, until: 30 } });

describe('effort', () => {
  it('is one for all searches of a controller: what they look at is taken from it, and no more than there is', () => {
    const several = inventedController(26, { mostZones: 8, mostPrograms: 3 });
    const given = { work: 1e9, nodes: 20_000, visits: 10, looks: 2_000, layouts: 100 };
    const left = { ...given };
    fullProgram(several, planGround(several), left);
    expect(left.nodes).toBeLessThan(given.nodes);
    expect(left.visits).toBeLessThan(given.visits);
    expect(left.layouts).toBeLessThan(given.layouts);
    for (const each of Object.values(left)) expect(each).toBeGreaterThanOrEqual(-1);
  });

  it('is counted in steps of work: with a part of it a crowded controller takes less, and keeps its bound below the cheapest', () => {
    const crowd = inventedController(142);
    const [whole, part] = [FOR_AN_ANSWER.work / 8, FOR_AN_ANSWER.work / 64].map((work) => {
      const left = { ...FOR_AN_ANSWER, work };
      const found = fullProgram(crowd, planGround(crowd), left);
      return { found, taken: (work - left.work) / work };
    });
    expect(whole!.taken).toBeLessThan(2);
    expect(part!.found.bound).toBeLessThanOrEqual(whole!.found.costBeforeLayout + 1e-6);
  });

  // 2,865 and 9,633 are what the planner gave out that knew no interval of 5 days: whoever may choose from more never pays more.
  it('looks for programs that fit with their soaks, where fitting soaks in has made the cheapest days dear', () => {
    expect(fullProgram(inventedController(340)).cost).toBeLessThan(2_865);
    expect(fullProgram(inventedController(214)).cost).toBeLessThan(9_633);
  });

  it('keeps its bound below the cheapest, and offers what fits, when there is none left', () => {
    const whole = fullProgram(crowded);
    const poor = fullProgram(crowded, planGround(crowded), { work: 0, nodes: 0, visits: 0, looks: 0, layouts: 0 });
    expect(poor.programs.length).toBeGreaterThan(0);
    expect(poor.bound).toBeLessThanOrEqual(whole.costBeforeLayout + 1e-6);
    expect(poor.costBeforeLayout).toBeGreaterThanOrEqual(whole.bound - 1e-6);
  });

  it('goes to the weekdays and days of programs that promise most, so that an answer proves itself where several weeks are to be tried', () => {
    const { costBeforeLayout, bound } = fullProgram(inventedController(43));
    expect(bound).toBeGreaterThan(0.99 * costBeforeLayout);
  });

  it('finds the programs that more effort finds, where many choices of days cost nearly the same', () => {
    const [answered, proven] = [FOR_AN_ANSWER, { work: 1e15, nodes: 500_000, visits: 10_000, looks: 500_000, layouts: 600 }].map(
      (effort) => {
        const crowd = inventedController(142);
        return fullProgram(crowd, planGround(crowd), { ...effort });
      },
    );
    expect(answered!.costBeforeLayout).toBeLessThan(1.01 * proven!.bound);
  });

  // The proof of this controller with 3 million partial choices finds 20,172 and bounds it by 19,538; taken in the order of their cost at the
  // week's prices alone the choices end at 42,203.
  it('looks around the best choice of days too: two programs on the same three days, one before dawn and one before midnight', () => {
    const found = fullProgram(inventedController(160));
    expect(found.costBeforeLayout).toBeLessThan(1.05 * 20_172);
    const days = found.programs.map((program) => JSON.stringify(program.days));
    expect(new Set(days).size).toBeLessThan(days.length);
  });

  it('is not spent on programs that are not used: they add no limit to a choice of days', () => {
    const free = aController(zones);
    const [variant] = percentVariants(free);
    const ground = buildGround(free, planGround(free), 127, variant!);
    const option = ground.slots[0]?.options.find(({ days }) => days.patterns.length > 1);
    expect(option).toBeDefined();
    const used = [option!, option!];
    const unused = [null, null, null, null];
    expect(leafProblem(ground, [...used, ...unused]).problem.limits).toHaveLength(leafProblem(ground, used).problem.limits.length);
  });
});
