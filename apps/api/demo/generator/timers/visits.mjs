// When a crew is on a property: about once a month, in daylight hours when no program runs.
import { dayOf, daysOfMonth, minuteOf, monthsFrom, startOfDay } from '../sky/calendar.mjs';
import { diceFor } from '../sky/random.mjs';

const clock = (dice) => dice.whole(10 * 60 + 20, 15 * 60 + 40);

function lastVisit(property, dice) {
  if (property.lastRead) return minuteOf(property.lastRead);
  return startOfDay(dayOf('2026-09-18') + dice.pick([0, 3, 3, 4, 4, 4, 5])) + clock(dice);
}

/**
 * @returns visits in order: the minute, and the month that the visit sets the timers for
 */
export function visitsOf(property) {
  const dice = diceFor(`visits ${property.name}`);
  const months = monthsFrom('2025-07', '2026-09');
  const visits = months.map((month, index) => {
    const first = daysOfMonth(month)[0];
    const shift = index === 0 ? dice.whole(-2, -1) : dice.whole(-2, 1);
    return { at: startOfDay(first + shift) + clock(dice), month };
  });
  return [...visits, { at: lastVisit(property, dice), month: null }];
}
