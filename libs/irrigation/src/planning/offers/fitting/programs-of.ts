import { dateOfDayNumber, dayNumberOfDate } from '../../../calendar/local-date.js';
import type { Program, ProgramDays } from '../../../settings/settings-fact.js';
import { EVERY_DAY, maskOfWeekdays, weekdayPattern } from '../../days/day-pattern.js';
import type { PlanInput } from '../../plan-input.js';
import type { Ground } from '../../pricing/assignment.js';
import type { FittedStarts } from './lay-out.js';

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/**
 * Programs as they are entered: an assignment with names, stations in their order, and start times.
 *
 * @param input - The controller. [code]
 * @param ground - What was searched on. [–]
 * @param fitted - What was found, and where its starts are. [–]
 * @returns The programs that water anything. [code]
 */
export function programsOf(input: PlanInput, ground: Ground, fitted: FittedStarts): readonly Program[] {
  const { assignment, divided, starts, dayLater } = fitted;
  const taken = new Set((input.present ?? []).map(({ name }) => name));
  const free = [...LETTERS].filter((letter) => !taken.has(letter));
  return assignment.options.flatMap((option, slot) => {
    const pattern = assignment.patterns[slot];
    const program = divided[slot];
    if (!option || !program || !pattern) return [];
    return [
      {
        name: ground.slots[slot]?.present?.name ?? free.shift() ?? `P${slot + 1}`,
        days: dayLater[slot] ? dayAfter(pattern.days) : pattern.days,
        starts: starts[slot] ?? [],
        adjustPercent: option.percent,
        stations: program.stations,
      },
    ];
  });
}

/**
 * A night that began on Monday goes on on Tuesday: what starts after midnight is set for the day after.
 *
 * @param days - Days on which the night begins. [code]
 * @returns Days to set. [code]
 */
export function dayAfter(days: ProgramDays): ProgramDays {
  if (days.kind === 'every') return { ...days, from: dateOfDayNumber(dayNumberOfDate(days.from) + 1) };
  if (days.kind !== 'weekdays') return days;
  const mask = maskOfWeekdays(days.weekdays);
  return weekdayPattern(((mask << 1) | (mask >> 6)) & EVERY_DAY).days;
}
