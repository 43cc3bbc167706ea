import { weekdayPattern } from '../days/day-pattern.js';
import { rulesInMonth, rulesOfZone } from '../days/rules-of-zone.js';
import { longestCycle } from '../demand/cycles-of-run.js';
import { judgePlan } from '../judge/judge-plan.js';
import type { PlanJudgement } from '../judge/plan-judgement.js';
import { traitsOfMonth } from '../judge/plan-runs.js';
import type { PlanInput, ZoneToPlan } from '../plan-input.js';
import type { EffortLeft } from '../search/effort.js';
import { fullProgram, planGround } from './full-program.js';

/** Unmet need below this share is the timer's resolution, not an impossibility. [–] */
const WORTH_TELLING = 0.02;

/** What makes a need impossible. */
export type ImpossibleBecause =
  | 'a rule forbids watering'
  | 'more flow than meter and main carry'
  | 'the soil takes less than the shortest run'
  | 'the percent of the month is 0'
  | 'the timer has no such station'
  | 'the timer takes too small a percent'
  | 'the rules leave too few days or minutes'
  | 'the soil takes it too slowly for the hours'
  | 'the timer has too few starts or minutes'
  | 'the roots bridge too little'
  | 'the hours are too short for all zones'
  | 'no way was found to lay starts and soaks into the hours'
  | 'the timer has too few programs';

/** A need that no program meets: which zone, by how much, why, and what would free it. [L] in the month */
export interface Impossible {
  readonly zoneId: string;
  readonly station: number;
  readonly unmetLitres: number;
  readonly because: ImpossibleBecause;
  readonly freedBy: FreedBy;
}

/** The upgrade that would free a need. */
export type FreedBy =
  | 'other plants, or a method that the rule exempts'
  | 'smaller nozzles, or the zone divided'
  | 'nozzles of a lower rate'
  | 'another percent of the month'
  | 'plants of less need, deeper soil and mulch, or a method that the rule exempts'
  | 'a timer that holds more'
  | 'longer hours, or a second timer beside this one'
  | 'a timer with more programs';

const FREED_BY: Readonly<Record<ImpossibleBecause, FreedBy>> = {
  'a rule forbids watering': 'other plants, or a method that the rule exempts',
  'more flow than meter and main carry': 'smaller nozzles, or the zone divided',
  'the soil takes less than the shortest run': 'nozzles of a lower rate',
  'the percent of the month is 0': 'another percent of the month',
  'the timer has no such station': 'a timer that holds more',
  'the timer takes too small a percent': 'a timer that holds more',
  'the rules leave too few days or minutes': 'plants of less need, deeper soil and mulch, or a method that the rule exempts',
  'the soil takes it too slowly for the hours': 'nozzles of a lower rate',
  'the timer has too few starts or minutes': 'a timer that holds more',
  'the roots bridge too little': 'plants of less need, deeper soil and mulch, or a method that the rule exempts',
  'the hours are too short for all zones': 'longer hours, or a second timer beside this one',
  'no way was found to lay starts and soaks into the hours': 'longer hours, or a second timer beside this one',
  'the timer has too few programs': 'a timer with more programs',
};

/**
 * Needs that the best programs leave unmet, each with its cause: found by taking away one limit after another until the zone alone is met,
 * and, where alone it is, the hours that all zones share.
 *
 * @param input - The controller and the month. [code]
 * @param best - What the best programs do. [L]
 * @param left - How much may be looked at, changed to what is left. [–]
 * @returns Zones with more unmet than the timer's resolution explains, the thirstiest first. [L]
 */
export function impossibleNeeds(input: PlanInput, best: PlanJudgement, left: EffortLeft): readonly Impossible[] {
  const unmet = best.zones.filter(({ unmetLitres, neededLitres }) => unmetLitres > WORTH_TELLING * neededLitres);
  if (!unmet.length) return [];
  const shared = sharedCause(input, left);
  return unmet
    .map(({ zoneId, station, unmetLitres }) => {
      const zone = input.zones.find((each) => each.zoneId === zoneId);
      const because = (zone && ownCause(input, zone, left)) ?? shared(zoneId);
      return { zoneId, station, unmetLitres, because, freedBy: FREED_BY[because] };
    })
    .sort((a, b) => b.unmetLitres - a.unmetLitres);
}

function ownCause(input: PlanInput, zone: ZoneToPlan, left: EffortLeft): ImpossibleBecause | null {
  const missing = missingOfTimer(input, zone);
  if (missing) return missing;
  const allowed = rulesOfZone(rulesInMonth(input.rules, input.month, input.place), zone);
  if (allowed.forbidden) return 'a rule forbids watering';
  if (input.flowLimitLPerMin !== null && zone.flowLPerMin > input.flowLimitLPerMin) return 'more flow than meter and main carry';
  if (longestCycle(zone.intake, input.traits.minuteStep ?? 1) === 0) return 'the soil takes less than the shortest run';
  const alone: PlanInput = { ...input, zones: [zone], present: null };
  if (isMet(alone, left)) return null;
  return relaxed(alone, zone).find(({ without }) => isMet(without, left))?.because ?? 'the hours are too short for all zones';
}

function missingOfTimer({ traits, month }: PlanInput, { station }: ZoneToPlan): ImpossibleBecause | null {
  if (station > (traits.stations ?? Number.POSITIVE_INFINITY)) return 'the timer has no such station';
  if (traits.programs === 0) return 'the timer has too few programs';
  return traitsOfMonth(traits, month).monthlyAdjustPercent?.[0] === 0 ? 'the percent of the month is 0' : null;
}

interface Relaxed {
  readonly because: ImpossibleBecause;
  readonly without: PlanInput;
}

// One limit after another taken away.
function relaxed(alone: PlanInput, zone: ZoneToPlan): readonly Relaxed[] {
  return [
    { because: 'the rules leave too few days or minutes', without: { ...alone, rules: [] } },
    { because: 'the soil takes it too slowly for the hours', without: { ...alone, zones: [{ ...zone, intake: null }] } },
    {
      because: 'the timer takes too small a percent',
      without: { ...alone, traits: { ...alone.traits, maxAdjustPercent: null, adjustStepPercent: null } },
    },
    {
      because: 'the timer has too few starts or minutes',
      without: { ...alone, traits: { ...alone.traits, maxMinutes: null, startsPerProgram: PLENTY_OF_STARTS } },
    },
    { because: 'the roots bridge too little', without: { ...alone, zones: [{ ...zone, storageDays: null }] } },
  ];
}

const PLENTY_OF_STARTS = 12;

function isMet(input: PlanInput, left: EffortLeft): boolean {
  const { unmetLitres, neededLitres } = judgePlan(input, fullProgram(input, planGround(input), left).programs);
  return unmetLitres <= WORTH_TELLING * neededLitres;
}

// Every zone can be met alone, so they stand in each other's way: in the hours, or for want of programs. Where the week's minutes alone are more
// than its hours, nothing needs to be searched for.
function sharedCause(input: PlanInput, left: EffortLeft): (zoneId: string) => ImpossibleBecause {
  if (minutesExceedHours(input)) return () => 'the hours are too short for all zones';
  let metByHours: ReadonlySet<string> | null = null;
  return (zoneId) => {
    metByHours ??= zonesMetAllDay(input, left);
    return metByHours.has(zoneId) ? 'no way was found to lay starts and soaks into the hours' : 'the timer has too few programs';
  };
}

// Zones whose need could be met if the controller might run at any hour.
function zonesMetAllDay(input: PlanInput, left: EffortLeft): ReadonlySet<string> {
  const freed = {
    ...input,
    present: null,
    window: { from: 0, until: 1440 },
    rules: input.rules.map((rule) => ({ ...rule, blockedFrom: null, blockedUntil: null })),
  };
  const { programs } = fullProgram(freed, planGround(freed), left);
  const { zones } = judgePlan({ ...input, window: { from: 0, until: 1440 } }, programs);
  return new Set(zones.filter(({ unmetLitres, neededLitres }) => unmetLitres <= WORTH_TELLING * neededLitres).map(({ zoneId }) => zoneId));
}

const WEEK = 7;
const DAY = 1440;

// A week's minutes of all zones are more than its days and hours hold, however starts and soaks are laid.
function minutesExceedHours({ zones, rules, month, place, window, traits, flowLimitLPerMin }: PlanInput): boolean {
  const met = rulesInMonth(rules, month, place);
  const daysOf = ({ daysPerWeek, mask }: ReturnType<typeof rulesOfZone>) => Math.min(daysPerWeek, weekdayPattern(mask).perWeek);
  const days = Math.max(...zones.map((zone) => daysOf(rulesOfZone(met, zone))));
  const hours = window.until > window.from ? window.until - window.from : window.until - window.from + DAY;
  const lanes = flowLimitLPerMin === null ? 1 : Math.max(1, Math.floor(traits.runsAtOnce ?? 1));
  const needed = zones.reduce((sum, { needLitresPerDay, flowLPerMin }) => sum + (needLitresPerDay / flowLPerMin) * WEEK, 0);
  return needed * (1 - WORTH_TELLING) > days * hours * lanes;
}
