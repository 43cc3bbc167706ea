import { type Ground, priceIn } from '../pricing/assignment.js';
import type { CoreProblem } from './leaf-core.kernel.js';
import type { SlotOption } from '../pricing/slots.js';

/** Prices of the minutes that limits hold, the bound at these prices with the presses of the leaf, and what is known. [–] */
export interface Priced {
  readonly limits: Float64Array;
  readonly sets: Int32Array;
  readonly prices: Float64Array;
  readonly base: number;
  readonly below: number;
}

/** A leaf's runs that may be part of something cheaper than what is known, and which zone stands where. */
export interface Core {
  readonly problem: CoreProblem;
  readonly zoneAt: readonly number[];
}

interface Run {
  readonly above: number;
  readonly program: number;
  readonly steps: number;
  readonly minutes: number;
}

/**
 * Of all runs of all zones those that a cheaper choice can hold: a run that costs more above the cheapest of its zone than lies between bound
 * and what is known is in none. Zones with the least choice come first.
 *
 * @param ground - Zones, slots and limits. [–]
 * @param options - What each slot is given; null is unused. [–]
 * @param priced - Prices of minutes, bound and what is known. [–]
 * @returns The core. [min]
 */
export function coreProblem(ground: Ground, options: readonly (SlotOption | null)[], priced: Priced): Core {
  const room = priced.below - priced.base;
  const perMinute = options.map((_, slot) =>
    priced.prices.reduce((sum, price, limit) => sum + (((priced.sets[limit] as number) >> slot) & 1 ? price : 0), 0),
  );
  const runs = ground.zones.map((_, zone) => runsOf(ground, options, { zone, perMinute, room }));
  const zoneAt = runs.map((_, zone) => zone).sort((a, b) => regret(runs[b]) - regret(runs[a]));
  const inOrder = zoneAt.map((zone) => runs[zone] as readonly Run[]);
  const all = inOrder.flat();
  const from = new Int32Array(zoneAt.length + 1);
  inOrder.forEach(({ length }, at) => {
    from[at + 1] = (from[at] as number) + length;
  });
  const { limits, sets, prices, base } = priced;
  return {
    problem: {
      ...{ from, limits, sets, prices, base },
      above: Float64Array.from(all, ({ above }) => above),
      program: Int32Array.from(all, ({ program }) => program),
      steps: Int32Array.from(all, ({ steps }) => steps),
      minutes: Float64Array.from(all, ({ minutes }) => minutes),
    },
    zoneAt,
  };
}

function regret(runs: readonly Run[] | undefined): number {
  return runs?.[1]?.above ?? Number.POSITIVE_INFINITY;
}

interface OfZone {
  readonly zone: number;
  readonly perMinute: readonly number[];
  readonly room: number;
}

function runsOf(ground: Ground, options: readonly (SlotOption | null)[], { zone, perMinute, room }: OfZone): readonly Run[] {
  const dry = ground.dry[zone] as number;
  const cheapest = options.map((option, slot) => leastAt(ground, option, slot, { zone, price: perMinute[slot] as number }));
  const least = Math.min(dry, ...cheapest);
  const runs: Run[] = dry - least < room ? [{ above: dry - least, program: -1, steps: 0, minutes: 0 }] : [];
  options.forEach((option, slot) => {
    const choices = option?.zones[zone];
    if (!option || !choices || (cheapest[slot] as number) - least >= room) return;
    const perStep = ground.frame.step * option.starts;
    for (let steps = 1; steps < choices.table.length; steps += 1) {
      const minutes = steps * perStep;
      const above = priceIn(ground, zone, slot, option, steps) + (perMinute[slot] as number) * minutes - least;
      if (above < room) runs.push({ above: Math.max(0, above), program: slot, steps, minutes });
    }
  });
  return runs.sort((a, b) => a.above - b.above);
}

function leastAt(ground: Ground, option: SlotOption | null | undefined, slot: number, at: { zone: number; price: number }): number {
  const choices = option?.zones[at.zone];
  if (!option || !choices) return Number.POSITIVE_INFINITY;
  const perStep = ground.frame.step * option.starts;
  return choices.steps.reduce(
    (least, steps) => Math.min(least, priceIn(ground, at.zone, slot, option, steps) + at.price * perStep * steps),
    Number.POSITIVE_INFINITY,
  );
}
