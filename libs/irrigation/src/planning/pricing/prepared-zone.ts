import { longestCycle, longestRunWithin } from '../demand/cycles-of-run.js';
import { type RulesOfZone, rulesOfZone } from '../days/rules-of-zone.js';
import type { OpenHours } from '../layout/water-window.js';
import type { PlanInput, ZoneToPlan } from '../plan-input.js';
import type { PlanWeights } from '../plan-weights.js';
import type { WateringRule } from '../../rules/watering-rule.js';

/** A zone as the search takes it: need and storage in minutes of its own flow, and the longest cycle, start and day that soil, rules and hours leave. */
export interface PreparedZone {
  readonly zone: ZoneToPlan;
  readonly rules: RulesOfZone;
  readonly needPerDay: number;
  readonly storage: number;
  readonly longestCycle: number;
  readonly mostPerStart: number;
  readonly mostPerDay: number;
}

/** What all zones share: resolution [min], percents, days of the month, and what the timer can do. */
export interface PlanFrame {
  readonly step: number;
  readonly days: number;
  readonly hours: OpenHours;
  readonly weights: PlanWeights;
  readonly cycleSoak: boolean;
  readonly mostStarts: number;
  /** Longest run that can be entered, in whole steps. [min] */
  readonly mostMinutes: number;
  readonly mostStation: number;
}

const WHOLE_MINUTE = 1;
const DUST = 1e-9;
const TIGHTEST_SOAKS = 24;

/**
 * What all zones of a plan share. Timers whose resolution nobody has said take whole minutes; one that nobody says can pause between cycles
 * cannot; one whose starts are not known has as many as its programs use now.
 *
 * @param input - The controller and the month. [code]
 * @param days - Days of the month. [d]
 * @param hours - Hours in which everything runs. [min]
 * @returns The frame. [code]
 */
export function planFrame(input: PlanInput, days: number, hours: OpenHours): PlanFrame {
  const { traits, present, weights } = input;
  const used = Math.max(1, ...(present ?? []).map(({ starts }) => starts.length));
  const step = traits.minuteStep ?? WHOLE_MINUTE;
  return {
    step,
    days,
    hours,
    weights,
    cycleSoak: traits.cycleSoak === true,
    mostStarts: traits.startsPerProgram ?? used,
    mostMinutes: traits.maxMinutes === null ? Number.POSITIVE_INFINITY : Math.floor(traits.maxMinutes / step + DUST) * step,
    mostStation: traits.stations ?? Number.POSITIVE_INFINITY,
  };
}

/**
 * Makes a zone ready for the search.
 *
 * @param zone - The zone. [L/d] and [L/min]
 * @param rules - Rules that meet the place in the month. [code]
 * @param frame - What all zones share. [code]
 * @param flowLimit - What meter and main carry; null where nobody knows. [L/min]
 * @returns The zone in minutes; a flow above the limit, or a station that the timer has not, leaves no minute of it. [min]
 */
export function preparedZone(zone: ZoneToPlan, rules: readonly WateringRule[], frame: PlanFrame, flowLimit: number | null): PreparedZone {
  const left = rulesOfZone(rules, zone);
  const { step, hours, cycleSoak, mostStarts, mostMinutes, mostStation } = frame;
  const needPerDay = zone.needLitresPerDay / zone.flowLPerMin;
  const cycle = longestCycle(zone.intake, step);
  const [longest = 0] = hours.longest;
  const mostPerStart = cycleSoak ? longestRunWithin(zone.intake, step, longest, TIGHTEST_SOAKS) : Math.min(cycle, longest);
  const tooMuch = (flowLimit !== null && zone.flowLPerMin > flowLimit) || zone.station > mostStation;
  // Nothing times a longest run that nobody knows is nothing.
  const most = mostStarts > 0 ? Math.min(hours.minutes, left.maxMinutes, mostMinutes * mostStarts) : 0;
  return {
    zone,
    rules: left,
    needPerDay,
    storage: zone.storageDays === null ? Number.POSITIVE_INFINITY : Math.max(1, zone.storageDays) * needPerDay,
    longestCycle: cycle,
    mostPerStart,
    mostPerDay: tooMuch || left.forbidden ? 0 : Math.max(0, most),
  };
}
