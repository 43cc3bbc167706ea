import { type DayPattern, EVERY_DAY, patternOf, weekdayPattern } from './day-pattern.js';
import { gapsKey } from './gaps-key.js';
import { patternIsAllowed, type RulesOfZone } from './rules-of-zone.js';

/** Patterns that water alike and are allowed for the same zones: they differ by the weekdays they load. */
export interface PatternClass {
  readonly key: string;
  readonly patterns: readonly DayPattern[];
  readonly gaps: readonly number[];
  readonly perWeek: number;
  readonly allowed: readonly boolean[];
}

/** Intervals of which the twelve weeks that plans are judged over hold whole rounds; every seventh day is a weekday, which meets fewer programs. [d] */
const INTERVALS = [2, 3, 4, 6, 12, 14, 21, 28];
/** Where nobody knows what the roots bridge, they are not trusted for longer than this. [d] */
const UNKNOWN_ROOTS = 14;

/**
 * Intervals that the roots of any zone bridge.
 *
 * @param zones - Days that roots bridge; null where nobody knows. [d]
 * @returns Whole days from one watering to the next, two at least. [d]
 */
export function intervalsWithin(zones: readonly { readonly storageDays: number | null }[]): readonly number[] {
  const longest = zones.reduce((most, { storageDays }) => Math.max(most, Math.floor(storageDays ?? UNKNOWN_ROOTS)), 0);
  return INTERVALS.filter((days) => days <= longest);
}

/** First day of the month, from which intervals count, and those that are tried. [d] */
interface Intervals {
  readonly from: string;
  readonly everyDays: readonly number[];
}

/**
 * All days that programs of a controller may be given, in classes.
 *
 * Of weekdays that are as many and allowed for the same zones only the most even are kept: the longest gap decides what the roots have to
 * bridge.
 *
 * @param zones - What the rules leave each zone. [code]
 * @param daysOfWeek - The weekdays that all zones under a rule of days a week keep to, Monday the lowest bit. [code]
 * @param intervals - First day of the month, from which intervals count, and those that are tried. [d]
 * @returns Classes with at least one zone allowed. [code]
 */
export function patternClasses(zones: readonly RulesOfZone[], daysOfWeek: number, intervals: Intervals): readonly PatternClass[] {
  const { from, everyDays } = intervals;
  const weekdays = Array.from({ length: EVERY_DAY }, (_, at) => weekdayPattern(at + 1));
  const others: DayPattern[] = [
    ...everyDays.map((days) => patternOf({ kind: 'every', everyDays: days, from }, from)),
    ...(['odd', 'even'] as const).filter((kind) => zones.some(({ parity }) => parity === kind)).map((kind) => patternOf({ kind }, from)),
  ];
  const classes = new Map<string, PatternClass & { patterns: DayPattern[] }>();
  for (const pattern of [...weekdays, ...others]) {
    const allowed = zones.map((rules) => patternIsAllowed(rules, pattern, daysOfWeek));
    if (!allowed.some(Boolean)) continue;
    const { kind } = pattern.days;
    const key = `${kind === 'odd' || kind === 'even' ? kind : kind === 'every' ? 'every' : 'weekdays'} ${gapsKey(pattern)} ${allowed.map(Number).join('')}`;
    const known = classes.get(key);
    if (known) known.patterns.push(pattern);
    else classes.set(key, { key, patterns: [pattern], gaps: pattern.gaps, perWeek: pattern.perWeek, allowed });
  }
  return mostEven([...classes.values()]);
}

/**
 * The class of one pattern alone, as a program has it now.
 *
 * @param zones - What the rules leave each zone. [code]
 * @param daysOfWeek - As `patternClasses`. [code]
 * @param pattern - The pattern. [d]
 * @returns Its class, or null where no zone is allowed it. [code]
 */
export function classOfPattern(zones: readonly RulesOfZone[], daysOfWeek: number, pattern: DayPattern): PatternClass | null {
  const allowed = zones.map((rules) => patternIsAllowed(rules, pattern, daysOfWeek));
  if (!pattern.gaps.length || !allowed.some(Boolean)) return null;
  return { key: `as set ${gapsKey(pattern)}`, patterns: [pattern], gaps: pattern.gaps, perWeek: pattern.perWeek, allowed };
}

function mostEven(classes: readonly PatternClass[]): readonly PatternClass[] {
  const uneven = ({ gaps }: PatternClass) => gaps.reduce((sum, gap) => sum + gap * gap, 0);
  const alike = (one: PatternClass, other: PatternClass) =>
    one.key.split(' ')[0] === 'weekdays' &&
    other.key.split(' ')[0] === 'weekdays' &&
    one.perWeek === other.perWeek &&
    one.allowed.every((allowed, zone) => other.allowed[zone] || !allowed);
  return classes.filter((one) => !classes.some((other) => other !== one && alike(one, other) && uneven(other) < uneven(one)));
}

/**
 * Sets of weekdays to try where rules count the days of a week: one of each shape, and those that hold a program's present days.
 *
 * @param most - Days that a week may have. [d]
 * @param allowed - Weekdays that the rules leave, Monday the lowest bit. [code]
 * @param present - Weekdays of the programs now. [code]
 * @returns Sets of as many weekdays, the most even first, Monday the lowest bit. [code]
 */
export function weeksToTry(most: number, allowed: number, present: readonly number[]): readonly number[] {
  if (most >= 7) return [EVERY_DAY];
  const bits = (mask: number) => weekdayPattern(mask).perWeek;
  const size = Math.min(most, bits(allowed));
  const uneven = (mask: number) => weekdayPattern(mask).gaps.reduce((sum, gap) => sum + gap * gap, 0);
  const sets = Array.from({ length: EVERY_DAY }, (_, at) => at + 1)
    .filter((mask) => (mask & ~allowed) === 0 && bits(mask) === size)
    .sort((a, b) => uneven(a) - uneven(b));
  const shapes = new Set<string>();
  return sets.filter((mask) => {
    const holdsPresent = present.some((days) => days !== 0 && (days & ~mask) === 0);
    const shape = allowed === EVERY_DAY ? gapsKey(weekdayPattern(mask)) : String(mask);
    if (!holdsPresent && shapes.has(shape)) return false;
    shapes.add(shape);
    return true;
  });
}
