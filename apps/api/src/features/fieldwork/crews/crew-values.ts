import type { CrewInput } from './crew.input.js';
import type { CrewRow } from './crew.entity.js';
import { between, judgeValues, name } from '../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { cleanSkills } from '../skills.js';

type CrewHours = Pick<CrewRow, 'workingDays' | 'dayStartsMinute' | 'dayEndsMinute' | 'breakMinutes'>;

const LAST_MINUTE = 1440;

/** What a crew keeps of an input: what was left out is not among it, and stays. A start is given by both of its numbers, or taken back by both. */
export function crewValues(input: CrewInput): Partial<CrewRow> {
  const { workingDays, dayStartsMinute, dayEndsMinute, breakMinutes } = input;
  const hours: Partial<CrewHours> = {
    ...(workingDays ? { workingDays: [...new Set(workingDays)].sort((one, other) => one - other) } : {}),
    ...(typeof dayStartsMinute === 'number' ? { dayStartsMinute } : {}),
    ...(typeof dayEndsMinute === 'number' ? { dayEndsMinute } : {}),
    ...(typeof breakMinutes === 'number' ? { breakMinutes } : {}),
  };
  const start =
    input.startLatitude === undefined ? {} : { startLatitude: input.startLatitude, startLongitude: input.startLongitude ?? null };
  return { name: input.name.trim(), ...(input.skills ? { skills: cleanSkills(input.skills) } : {}), ...start, ...hours };
}

/** Refuses hours, days and starts that cannot be. */
export function judgeCrew(input: CrewInput): void {
  judgeValues(input, {
    name: name(),
    startLatitude: between(-90, 90, '°'),
    startLongitude: between(-180, 180, '°'),
    dayStartsMinute: between(0, LAST_MINUTE - 1, 'minutes'),
    dayEndsMinute: between(1, LAST_MINUTE, 'minutes'),
    breakMinutes: between(0, 600, 'minutes'),
    workingDays: (days: readonly number[]) => (days.every((day) => day >= 1 && day <= 7) ? null : 'days from Monday 1 to Sunday 7'),
  });
  if (((input.startLatitude ?? null) === null) !== ((input.startLongitude ?? null) === null))
    throw platformProblems.valueRefused({
      field: 'startLongitude',
      found: input.startLongitude,
      expected: 'both latitude and longitude, or neither',
    });
  const { dayStartsMinute: starts, dayEndsMinute: ends } = input;
  if (typeof starts === 'number' && typeof ends === 'number' && ends <= starts)
    throw platformProblems.valueRefused({ field: 'dayEndsMinute', found: ends, expected: `an end after the start at minute ${starts}` });
}
