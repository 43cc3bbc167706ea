import { DIREST_THIRST } from '../demand/felt-thirst.js';
import type { Assignment, Ground } from '../pricing/assignment.js';
import { EVERY_DAY, weekdayPattern } from '../days/day-pattern.js';
import { type MinutePrices, minutePrice } from './choices/choice-problem.js';

/**
 * The prices at which the first choice just fills the days of ruled zones, and then the week: what all choices are compared at.
 *
 * @param ground - Zones, slots and limits. [–]
 * @param weekly - Minutes of a week in which anything may run. [min]
 * @param assignment - The first choice. [–]
 * @returns Prices of the week's minutes. [–]
 */
export function weekPrices(ground: Ground, weekly: number, assignment: Assignment): MinutePrices {
  const bound =
    ground.week === EVERY_DAY
      ? 0
      : priceThatFills(ground, (price) => minutesAt(ground, assignment, { any: 0, bound: price }).bound, boundMinutes(ground));
  return { any: priceThatFills(ground, (price) => minutesAt(ground, assignment, { any: price, bound }).any, weekly), bound };
}

function priceThatFills(ground: Ground, minutesAtPrice: (price: number) => number, most: number): number {
  if (minutesAtPrice(0) <= most) return 0;
  let [low, high] = [0, (8 * DIREST_THIRST * ground.frame.weights.thirst * ground.frame.days * largestFlow(ground)) / 7];
  for (let round = 0; round < 21; round += 1) {
    const middle = (low + high) / 2;
    if (minutesAtPrice(middle) > most) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * Minutes of a week on the weekdays that rules leave.
 *
 * @param ground - Limits of a day. [min]
 * @returns Minutes. [min]
 */
export function boundMinutes(ground: Ground): number {
  const { week, perDay } = ground;
  return weekdayPattern(week).perWeek * perDay;
}

/**
 * Minutes of a week that a choice takes at some prices.
 *
 * @param ground - Zones and slots. [–]
 * @param chosen - What each slot is given; null is unused. [–]
 * @param prices - Prices of the week's minutes. [–]
 * @returns Minutes of all programs, and of those bound to the weekdays that rules leave. [min]
 */
export function minutesAt(ground: Ground, chosen: Pick<Assignment, 'options'>, prices: MinutePrices): MinutePrices {
  const { options } = chosen;
  const priced = options.map((option) => (option ? minutePrice(option, ground.week, prices) : 0));
  const isBound = options.map((option) => option !== null && minutePrice(option, ground.week, { any: 0, bound: 1 }) > 0);
  let [any, bound] = [0, 0];
  ground.zones.forEach((_, zone) => {
    let [least, minutes, where] = [ground.dry[zone] as number, 0, -1];
    options.forEach((option, slot) => {
      const choices = option?.zones[zone];
      choices?.steps.forEach((steps, at) => {
        const weekly = choices.minutesPerStep * steps;
        const cost = (choices.prices[at] as number) + (priced[slot] as number) * weekly;
        if (cost < least) [least, minutes, where] = [cost, weekly, slot];
      });
    });
    any += minutes;
    if (isBound[where]) bound += minutes;
  });
  return { any, bound };
}

function largestFlow({ zones }: Ground): number {
  return zones.reduce((most, { zone }) => Math.max(most, zone.flowLPerMin), 0);
}
