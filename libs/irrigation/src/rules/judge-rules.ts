import { dateOfDayNumber } from '../calendar/local-date.js';
import type { ReplayInput } from '../settings/replay/replay-controller.js';
import { replayStarts } from '../settings/replay/replay-starts.js';
import { settingsTimeline } from '../settings/replay/settings-timeline.js';
import { blockedMinutes, dayIsAllowed, daysLeftBy, rainForbidding } from './allowed-by-rule.js';
import { ruleAppliesToPlace, ruleAppliesToStation, ruleIsInForce } from './rule-applies.js';
import type { BreachKind, RuleBreach, ToKeepRule } from './rule-breach.js';
import { onWallClock, type WallClockRun } from './wall-clock-run.js';
import type { RuledPlace, WateringRule } from './watering-rule.js';

const DAYS_PER_WEEK = 7;
/** 1970-01-05, the first Monday: weeks are counted from Mondays. */
const FIRST_MONDAY = 4;
/** Floating-point dust of minutes. */
const DUST = 1e-6;

const NOTHING: ToKeepRule = { allowedDays: null, daysPerWeek: null, blocked: null, maxMinutes: null, pauseHours: null };

interface Offence {
  readonly kind: BreachKind;
  readonly run: WallClockRun;
}

/**
 * Rules that a controller's settings break, judged by the runs that they make over some days.
 *
 * Every start is replayed as the controller runs it, so that percents, queues, pauses and runs past midnight count as they happen. A run
 * belongs to the date on which it begins. Weeks run from Monday to Sunday; of a week that is not whole the days looked at are counted.
 *
 * @param replay - The settings, pauses, traits and the days looked at. [code]
 * @param rules - The rules of the water supplier, in any order; each is judged apart, so that the stricter is kept too. [code]
 * @param place - The address, its water, stations and rain. [code]
 * @returns One breach for each rule, kind and program, with its stations; none where all rules are kept. [code]
 * @throws {DomainError} `WALL_TIME_INVALID`, `SETTINGS_OUT_OF_DOMAIN`, `PROGRAM_DAYS_INVALID` or `MONTHLY_ADJUST_INVALID` on bad settings.
 */
export function judgeRules(replay: ReplayInput, rules: readonly WateringRule[], place: RuledPlace): readonly RuleBreach[] {
  const last = replay.firstDay + replay.days;
  const runs = replayStarts(replay, settingsTimeline(replay.facts, replay.clockChanges))
    .map((run) => onWallClock(run, replay.clockChanges))
    .filter(({ dayNumber }) => dayNumber >= replay.firstDay && dayNumber < last);
  const stations = new Map(place.stations.map((station) => [station.station, station]));
  return rules
    .filter((rule) => ruleAppliesToPlace(rule, place))
    .flatMap((rule) => {
      const ruled = runs.filter((run) => ruleIsInForce(rule, run.date) && ruleAppliesToStation(rule, stations.get(run.station)));
      return breachesOf(rule, [...byRun(rule, ruled, place), ...byWeek(rule, ruled), ...byDay(rule, ruled)]);
    });
}

function byRun(rule: WateringRule, runs: readonly WallClockRun[], place: RuledPlace): readonly Offence[] {
  const allowed = daysLeftBy(rule);
  const dayKind: BreachKind = allowed?.kind === 'none' ? 'must not be watered' : 'day not allowed';
  return runs.flatMap((run) => [
    ...(dayIsAllowed(allowed, run.dayNumber) ? [] : [{ kind: dayKind, run }]),
    ...(blockedMinutes(rule, run.beginMinute, run.end - run.begin) > DUST ? [{ kind: 'blocked hours' as const, run }] : []),
    ...(rainForbidding(rule, place.rain, run.begin) ? [{ kind: 'too soon after rain' as const, run }] : []),
  ]);
}

// The days beyond those allowed are the offence: the first ones of the week are within the rule.
function byWeek(rule: WateringRule, runs: readonly WallClockRun[]): readonly Offence[] {
  const { daysPerWeek } = rule;
  if (daysPerWeek === null) return [];
  const weekOf = ({ dayNumber }: WallClockRun) => Math.floor((dayNumber - FIRST_MONDAY) / DAYS_PER_WEEK);
  return [...grouped(runs, (run) => String(weekOf(run))).values()].flatMap((week) => {
    const days = [...new Set(week.map(({ dayNumber }) => dayNumber))].sort((a, b) => a - b);
    const beyond = new Set(days.slice(daysPerWeek));
    return week.filter(({ dayNumber }) => beyond.has(dayNumber)).map((run) => ({ kind: 'too many days a week' as const, run }));
  });
}

function byDay(rule: WateringRule, runs: readonly WallClockRun[]): readonly Offence[] {
  const { maxMinutes } = rule;
  if (maxMinutes === null) return [];
  return [...grouped(runs, ({ station, dayNumber }) => `${station} ${dayNumber}`).values()].flatMap((day) => {
    const minutes = day.reduce((sum, { begin, end }) => sum + end - begin, 0);
    return minutes > maxMinutes + DUST ? day.map((run) => ({ kind: 'too many minutes' as const, run })) : [];
  });
}

function breachesOf(rule: WateringRule, offences: readonly Offence[]): readonly RuleBreach[] {
  return [...grouped(offences, ({ kind, run }) => `${kind} ${run.program}`).values()].flatMap((alike) => {
    const [first] = alike;
    if (!first) return [];
    const days = [...new Set(alike.map(({ run }) => run.dayNumber))].sort((a, b) => a - b);
    return [
      {
        rule: rule.name,
        kind: first.kind,
        program: first.run.program,
        stations: [...new Set(alike.map(({ run }) => run.station))].sort((a, b) => a - b),
        times: days.length,
        firstDate: dateOfDayNumber(days[0] ?? 0),
        lastDate: dateOfDayNumber(days.at(-1) ?? 0),
        toKeep: toKeep(rule, first.kind),
      },
    ];
  });
}

function toKeep(rule: WateringRule, kind: BreachKind): ToKeepRule {
  switch (kind) {
    case 'must not be watered':
    case 'day not allowed':
      return { ...NOTHING, allowedDays: daysLeftBy(rule) };
    case 'too many days a week':
      return { ...NOTHING, daysPerWeek: rule.daysPerWeek };
    case 'blocked hours':
      return { ...NOTHING, blocked: { from: rule.blockedFrom ?? 0, until: rule.blockedUntil ?? 24 * 60 } };
    case 'too many minutes':
      return { ...NOTHING, maxMinutes: rule.maxMinutes };
    case 'too soon after rain':
      return { ...NOTHING, pauseHours: rule.hoursAfterRain };
  }
}

function grouped<Thing>(things: readonly Thing[], keyOf: (thing: Thing) => string): ReadonlyMap<string, readonly Thing[]> {
  const groups = new Map<string, Thing[]>();
  for (const thing of things) {
    const key = keyOf(thing);
    const group = groups.get(key);
    if (group) group.push(thing);
    else groups.set(key, [thing]);
  }
  return groups;
}
