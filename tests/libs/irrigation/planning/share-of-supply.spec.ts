import fc from 'fast-check';
import { expect, it } from 'vitest';
import { planRuns } from '@rillbook/irrigation/planning/judge/plan-runs.js';
import { shareOfSupply, type Sharer } from '@rillbook/irrigation/planning/layout/share-of-supply.js';
import { planController } from '@rillbook/irrigation/planning/offers/plan-controller.js';
import type { PlanInput } from '@rillbook/irrigation/planning/plan-input.js';
import { inventedController } from '../../../support/planning/controllers.mjs';

// What one meter carries is shared so that plans made apart never ask together for more: no source, it follows from what a meter is.

const NIGHT = { from: 1320, until: 360 };
const open = () => false;
const sharer = (id: string, largestFlowLPerMin: number | null, minutes: number | null): Sharer => ({ id, largestFlowLPerMin, minutes });
const supply = (flowLimitLPerMin: number, window = NIGHT, isClosed: (minute: number) => boolean = open) => ({
  flowLimitLPerMin,
  window,
  isClosed,
});

it('gives each its largest zone and of the rest what its minutes are, where all may run at once', () => {
  const both = [sharer('a', 40, 300), sharer('b', 60, 100)];
  expect(shareOfSupply('a', both, supply(180))).toEqual({ by: 'flow', flowLimitLPerMin: 100, window: NIGHT });
  expect(shareOfSupply('b', both, supply(180))).toEqual({ by: 'flow', flowLimitLPerMin: 80, window: NIGHT });
});

it('lets them water one after the other where they may not, or a flow is not known', () => {
  const both = [sharer('b', 60, 100), sharer('a', 40, 300)];
  expect(shareOfSupply('a', both, supply(90))).toEqual({ by: 'hours', flowLimitLPerMin: 90, window: { from: 1320, until: 235 } });
  expect(shareOfSupply('b', both, supply(90))).toEqual({ by: 'hours', flowLimitLPerMin: 90, window: { from: 235, until: 360 } });
  const unknown = [sharer('a', 40, 300), sharer('b', null, null)];
  expect(shareOfSupply('b', unknown, supply(1000)).window).toEqual({ from: 120, until: 360 });
});

it('divides hours that are open: from midnight to 4 nobody may water', () => {
  const both = [sharer('a', 80, 1), sharer('b', 80, 1)];
  const closed = (minute: number) => minute < 240;
  expect(shareOfSupply('a', both, supply(90, NIGHT, closed)).window).toEqual({ from: 1320, until: 240 });
  expect(shareOfSupply('b', both, supply(90, NIGHT, closed)).window).toEqual({ from: 240, until: 360 });
});

it('never gives more than the whole, nor one minute twice', () => {
  const anyone = fc.record({
    largest: fc.option(fc.double({ min: 1, max: 200, noNaN: true })),
    minutes: fc.option(fc.double({ min: 0, max: 900, noNaN: true })),
  });
  const hours = fc.record({ from: fc.integer({ min: 0, max: 1439 }), length: fc.integer({ min: 60, max: 1435 }) });
  fc.assert(
    fc.property(
      fc.array(anyone, { minLength: 2, maxLength: 6 }),
      hours,
      fc.double({ min: 5, max: 600, noNaN: true }),
      (all, { from, length }, limit) => {
        const sharers = all.map(({ largest, minutes }, at) => sharer(`c${at}`, largest, minutes));
        const window = { from, until: (from + length) % 1440 };
        const parts = sharers.map(({ id }) => shareOfSupply(id, sharers, supply(limit, window)));
        const flows = parts.reduce((sum, { flowLimitLPerMin }) => sum + flowLimitLPerMin, 0);
        if (parts[0]!.by === 'flow') {
          expect(flows).toBeLessThanOrEqual(limit + 1e-6);
          return;
        }
        const minutes = parts.map((part) => (part.window.until - part.window.from + 1440) % 1440);
        expect(Math.min(...minutes)).toBeGreaterThan(0);
        expect(minutes.reduce((sum, each) => sum + each, 0)).toBe(length);
        parts.slice(1).forEach((part, at) => expect(part.window.from).toBe(parts[at]!.window.until));
      },
    ),
    { numRuns: 300 },
  );
});

const minutesFor = ({ zones }: PlanInput) =>
  zones.reduce((sum, { needLitresPerDay, flowLPerMin }) => sum + needLitresPerDay / flowLPerMin, 0);
const largestOf = ({ zones }: PlanInput) => Math.max(...zones.map(({ flowLPerMin }) => flowLPerMin));

/** The most flow of valves that are open at once in twelve weeks of all. [L/min] */
function largestTogether(planned: readonly { readonly input: PlanInput; readonly programs: Parameters<typeof planRuns>[0] }[]): number {
  const turns = planned.flatMap(({ input, programs }) => {
    const { all, days } = planRuns(programs, input.traits, input.month);
    const rounds = Array.from({ length: 84 / days }, (_, round) => round * days * 1440);
    return all.flatMap(({ station, begin, end }) => {
      const flow = input.zones.find((zone) => zone.station === station)!.flowLPerMin;
      return rounds.flatMap((shift) => [
        { at: begin + shift, flow },
        { at: end + shift, flow: -flow },
      ]);
    });
  });
  turns.sort((one, other) => one.at - other.at || one.flow - other.flow);
  let [now, most] = [0, 0];
  for (const { flow } of turns) most = Math.max(most, (now += flow));
  return most;
}

it.each([1, 2, 3, 4])('plans of two controllers on one meter never ask together for more than it carries: %i', (seed) => {
  const worlds = [
    inventedController(2 * seed, { mostZones: 3, mostPrograms: 1 }),
    inventedController(2 * seed + 1, { mostZones: 3, mostPrograms: 1 }),
  ].map((world) => ({ ...world, window: NIGHT, traits: { ...world.traits, runsAtOnce: 1 }, present: null }));
  const sharers = worlds.map((world, at) => sharer(`c${at}`, largestOf(world), minutesFor(world)));
  const [one, other] = worlds.map(largestOf) as [number, number];
  for (const limit of [Math.max(one, other) + 1, one + other + 10]) {
    const planned = worlds.map((world, at) => {
      const part = shareOfSupply(`c${at}`, sharers, supply(limit));
      const input = { ...world, window: part.window, flowLimitLPerMin: part.flowLimitLPerMin };
      return { input, programs: planController(input).full.programs };
    });
    expect(planned.some(({ programs }) => programs.length > 0)).toBe(true);
    expect(largestTogether(planned)).toBeGreaterThan(0);
    expect(largestTogether(planned)).toBeLessThanOrEqual(limit + 1e-6);
  }
});
