import { dateOfDayNumber, daysOfMonth, weekdayOfDayNumber } from '../../calendar/local-date.js';
import { judgeRules } from '../../rules/judge-rules.js';
import type { RuleBreach } from '../../rules/rule-breach.js';
import type { Program } from '../../settings/settings-fact.js';
import { rulesInMonth } from '../days/rules-of-zone.js';
import { openHours } from '../layout/water-window.js';
import type { PlanInput } from '../plan-input.js';
import { brokenLimits } from './broken-limits.js';
import { hoursOfRuns } from './hours-of-runs.js';
import { judgeZone } from './judge-zone.js';
import { keyPresses } from './key-presses.js';
import type { PlanJudgement } from './plan-judgement.js';
import { type PlanRuns, planRuns, traitsOfMonth } from './plan-runs.js';

const WEEK = 7;

/**
 * Replays programs before they are given out: what they use, leave unmet and waste in each zone, when they end, which rules and limits they
 * do not keep, and what all that costs.
 *
 * @param input - The controller and the month. [code]
 * @param programs - The programs to judge. [code]
 * @returns The judgement. [L]
 * @throws {DomainError} `SETTINGS_OUT_OF_DOMAIN`, `PROGRAM_DAYS_INVALID` or `MONTHLY_ADJUST_INVALID` on bad settings.
 */
export function judgePlan(input: PlanInput, programs: readonly Program[]): PlanJudgement {
  const runs = planRuns(programs, traitsOfMonth(input.traits, input.month), input.month);
  return judged(input, programs, runs, nightOf(input, runs));
}

/**
 * The same for programs of which only those are of use that keep the limits of timer, window, meter and main: of others no more is reckoned.
 *
 * @param input - The controller and the month. [code]
 * @param programs - The programs to judge. [code]
 * @returns The judgement, or null where a limit is not kept. [L]
 * @throws {DomainError} As `judgePlan`.
 */
export function judgeWithinLimits(input: PlanInput, programs: readonly Program[]): PlanJudgement | null {
  const runs = planRuns(programs, traitsOfMonth(input.traits, input.month), input.month);
  const night = nightOf(input, runs);
  return brokenLimits(input, programs, runs, night?.isWithin === false).length ? null : judged(input, programs, runs, night);
}

function nightOf(input: PlanInput, runs: PlanRuns) {
  return hoursOfRuns(runs.all, openHours(input.window, [], input.zones));
}

function judged(input: PlanInput, programs: readonly Program[], runs: PlanRuns, night: ReturnType<typeof nightOf>): PlanJudgement {
  const { days } = daysOfMonth(input.month);
  const zones = input.zones.map((zone) => judgeZone(zone, runs, days, input.weights));
  const presses = keyPresses(input.present, programs);
  const sum = (of: (zone: (typeof zones)[number]) => number) => zones.reduce((total, zone) => total + of(zone), 0);
  return {
    zones: zones.map(({ zone }) => zone),
    usedLitres: sum(({ zone }) => zone.usedLitres),
    neededLitres: sum(({ zone }) => zone.neededLitres),
    unmetLitres: sum(({ zone }) => zone.unmetLitres),
    wastedLitres: sum(({ zone }) => zone.wastedLitres),
    ranOffLitres: sum(({ zone }) => zone.ranOffLitres),
    keyPresses: presses,
    cost: sum(({ cost }) => cost) + input.weights.keyPress * presses,
    beginsAt: night?.beginsAt ?? null,
    endsAt: night?.endsAt ?? null,
    breaches: breachesOf(input, programs),
    limits: brokenLimits(input, programs, runs, night?.isWithin === false),
  };
}

// A plan is set for all of the month: a rule that is in force on any day of it is kept on all, and weeks are judged whole, so that a month that
// begins or ends within one hides no day too many.
function breachesOf(input: PlanInput, programs: readonly Program[]): readonly RuleBreach[] {
  const inMonth = rulesInMonth(input.rules, input.month, input.place);
  if (!inMonth.length) return [];
  const { firstDay, days } = daysOfMonth(input.month);
  const before = weekdayOfDayNumber(firstDay);
  const after = WEEK - 1 - weekdayOfDayNumber(firstDay + days - 1);
  const effectiveAt = `${dateOfDayNumber(firstDay - before - 3)}T00:00`;
  const rules = inMonth.map((rule) => ({ ...rule, effectiveFrom: null, effectiveUntil: null }));
  return judgeRules(
    {
      firstDay: firstDay - before,
      days: before + days + after,
      facts: [{ effectiveAt, record: 'left', state: 'on', programs }],
      pauses: [],
      traits: traitsOfMonth(input.traits, input.month),
      clockChanges: [],
    },
    rules,
    { ...input.place, stations: input.zones, rain: [] },
  );
}
