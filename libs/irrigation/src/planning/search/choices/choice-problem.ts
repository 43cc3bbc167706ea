import type { Ground } from '../../pricing/assignment.js';
import type { ChoiceProblem } from './choose-options.kernel.js';
import type { SlotOption, ZoneChoices } from '../../pricing/slots.js';

/** Prices of a minute that runs in a week: of any, and besides of those in programs bound to the weekdays that rules leave. [–] */
export interface MinutePrices {
  readonly any: number;
  readonly bound: number;
}

/**
 * What a minute costs in an option.
 *
 * @param option - Days of a program. [d]
 * @param week - Weekdays that rules leave ruled zones, Monday the lowest bit. [code]
 * @param prices - The prices. [–]
 * @returns Price of a minute that runs in a week. [–]
 */
export function minutePrice(option: Pick<SlotOption, 'days'>, week: number, prices: MinutePrices): number {
  const { any, bound } = prices;
  return bound > 0 && option.days.patterns.every(({ mask }) => (mask & ~week) === 0) ? any + bound : any;
}

/**
 * Writes slots, options and zones as numbers, at a price of every minute of the week.
 *
 * @param ground - Zones and slots. [–]
 * @param prices - Prices of the week's minutes. [–]
 * @returns The problem. [–]
 */
export function choiceProblem(ground: Ground, prices: MinutePrices): ChoiceProblem {
  const { zones, slots, dry, leaving, frame, week } = ground;
  const { keyPress } = frame.weights;
  const costsOf = ({ options }: (typeof slots)[number], at: number) => {
    const of = new Float64Array(options.length * zones.length).fill(Number.POSITIVE_INFINITY);
    options.forEach((option, index) => {
      const price = minutePrice(option, week, prices);
      option.zones.forEach((choices, zone) => {
        if (choices) of[index * zones.length + zone] = least(choices, price) + keyPress * (leaving[zone]?.[at] ?? 0);
      });
    });
    return of;
  };
  const costs: Float64Array[] = [];
  // Empty slots are alike: what their options cost is reckoned once.
  slots.forEach((slot, at) => {
    const isAlike = at > 0 && !slot.present && !slots[at - 1]?.present;
    costs.push(isAlike ? (costs[at - 1] as Float64Array) : costsOf(slot, at));
  });
  return {
    zones: zones.length,
    costs,
    fixed: slots.map(({ options }) => Float64Array.from(options, ({ presses }) => presses * keyPress)),
    dry: Float64Array.from(dry),
    sameAs: slots.map(({ present }, at) => (present ? at : -1)),
  };
}

function least({ steps, prices, minutesPerStep }: ZoneChoices, price: number): number {
  let best = Number.POSITIVE_INFINITY;
  for (let at = 0; at < steps.length; at += 1) {
    best = Math.min(best, (prices[at] as number) + price * minutesPerStep * (steps[at] as number));
  }
  return best;
}
