import { feltThirst } from '../demand/felt-thirst.js';
import type { Program } from '../../settings/settings-fact.js';
import { EVERY_DAY, patternOf } from '../days/day-pattern.js';
import { classOfPattern, type PatternClass, patternClasses } from '../days/pattern-classes.js';
import { longestStart } from '../layout/longest-start.js';
import { MOST_STARTS } from '../layout/water-window.js';
import type { PlanInput } from '../plan-input.js';
import type { Ground } from '../pricing/assignment.js';
import type { PlanFrame, PreparedZone } from '../pricing/prepared-zone.js';
import { stationNow } from '../pricing/run-setting.js';
import { type KnownPrices, type OptionOfSlot, pricedSlots } from '../pricing/slots.js';
import type { PercentVariant } from './percent-variants.js';

/** Days that a full program may repeat besides weekdays: where rules count days, and where none does. Each more of them makes the proof longer. [d] */
const BESIDE_RULED_DAYS = [2, 3, 4, 14];
const INTERVALS = [2, 3, 4, 5, 14];

/** What rules and month make of a controller; prices of runs are kept, for they are the same in every search of the month. */
export interface PlanGround {
  readonly frame: PlanFrame;
  readonly zones: readonly PreparedZone[];
  readonly known: KnownPrices;
}

/**
 * Lays the search's ground: slots with what they may be given, and what zones cost dry and by leaving programs.
 *
 * @param input - The controller and the month. [code]
 * @param base - What all zones share, and the zones. [min]
 * @param daysOfWeek - Weekdays that zones under a rule of days a week keep to, Monday the lowest bit. [code]
 * @param variant - Percents that programs may be given. [%]
 * @returns The ground. [–]
 */
export function buildGround(input: PlanInput, base: PlanGround, daysOfWeek: number, variant: PercentVariant): Ground {
  const { frame, zones, known } = base;
  const rules = zones.map((zone) => zone.rules);
  const from = `${input.month}-01`;
  const classes = patternClasses(rules, daysOfWeek, { from, everyDays: daysOfWeek === EVERY_DAY ? INTERVALS : BESIDE_RULED_DAYS });
  const presents = slotsOf(input);
  const slots = pricedSlots(zones, presents, (present) => optionsOf(present, classes, { rules, daysOfWeek, frame, variant, from }), {
    frame,
    known,
  });
  const lanes = lanesOf(input);
  const isIn = (zone: PreparedZone, present: Program | undefined) => Number(stationNow(present, zone.zone.station) !== null);
  const { thirst, keyPress } = frame.weights;
  return {
    zones,
    slots,
    dry: zones.map(
      (zone) => thirst * dryThirst(zone, frame.days) + keyPress * presents.reduce((sum, present) => sum + isIn(zone, present), 0),
    ),
    leaving: zones.map((zone) =>
      presents.map((_, slot) => presents.reduce((sum, present, other) => (other === slot ? sum : sum + isIn(zone, present)), 0)),
    ),
    frame,
    perDay: frame.hours.minutes * lanes,
    week: daysOfWeek & rules.reduce((mask, each) => mask & each.mask, daysOfWeek),
  };
}

function dryThirst({ zone }: PreparedZone, days: number): number {
  const need = zone.needLitresPerDay * days;
  return feltThirst(need, need);
}

// Programs run side by side where the timer can and meter and main carry as many of the largest zones.
function lanesOf({ traits, zones, flowLimitLPerMin }: PlanInput): number {
  if (flowLimitLPerMin === null) return 1;
  const lanes = Math.max(1, Math.floor(traits.runsAtOnce ?? 1));
  const largest = zones.map(({ flowLPerMin }) => flowLPerMin).sort((a, b) => b - a);
  const fits = (count: number) => largest.slice(0, count).reduce((sum, flow) => sum + flow, 0) <= flowLimitLPerMin;
  return Math.max(
    1,
    Array.from({ length: lanes }, (_, at) => at + 1)
      .filter(fits)
      .at(-1) ?? 1,
  );
}

// Programs that are set now keep their slot, as many as the timer holds; empty slots follow as far as zones could use them.
function slotsOf({ traits, present, zones }: PlanInput): readonly (Program | undefined)[] {
  const most = traits.programs ?? Math.max(1, (present ?? []).length);
  const now = (present ?? []).slice(0, most);
  const held = Math.min(most, zones.length);
  return [...now, ...new Array<undefined>(Math.max(0, held - now.length)).fill(undefined)];
}

interface About {
  readonly rules: readonly PreparedZone['rules'][];
  readonly daysOfWeek: number;
  readonly frame: PlanFrame;
  readonly variant: PercentVariant;
  readonly from: string;
}

function optionsOf(present: Program | undefined, classes: readonly PatternClass[], about: About): readonly OptionOfSlot[] {
  const { rules, daysOfWeek, frame, variant, from } = about;
  const asSet = present ? classOfPattern(rules, daysOfWeek, patternOf(present.days, from)) : null;
  const starts = startsToTry(frame);
  const days = [...(asSet ? [{ of: asSet, presses: 0 }] : []), ...classes.map((of) => ({ of, presses: 1 }))];
  return days.flatMap(({ of, presses }) =>
    starts.flatMap((count) =>
      variant.percentsOf(present).map(({ percent, inForce, presses: ofPercent }) => ({
        days: of,
        starts: count,
        percent,
        inForce,
        presses: presses + ofPercent,
      })),
    ),
  );
}

// A timer that pauses between cycles needs another start only where the hours are in pieces, and hold more of it so.
function startsToTry({ cycleSoak, mostStarts, hours }: PlanFrame): readonly number[] {
  const all = Array.from({ length: Math.max(1, Math.min(MOST_STARTS, mostStarts)) }, (_, at) => at + 1);
  if (!cycleSoak) return all;
  const held = (starts: number) => starts * longestStart(hours, starts, true);
  return all.filter((starts) => all.every((fewer) => fewer >= starts || held(fewer) < held(starts)));
}
