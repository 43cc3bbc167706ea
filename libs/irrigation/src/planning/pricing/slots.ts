import type { Program } from '../../settings/settings-fact.js';
import type { PatternClass } from '../days/pattern-classes.js';
import type { PlanFrame, PreparedZone } from './prepared-zone.js';
import { type RunCosts, runCosts } from './run-costs.js';
import { runSetting, stationNow, stepsAt } from './run-setting.js';

/** What a program slot may be given: days, starts a day and percent, with the presses that these alone take. */
export interface SlotOption {
  readonly days: PatternClass;
  readonly starts: number;
  /** As set in the program, and in force with the month's own percent. [%] */
  readonly percent: number;
  readonly inForce: number;
  readonly presses: number;
  /** By zone; null where the days are not allowed it. */
  readonly zones: readonly (ZoneChoices | null)[];
}

/** Runs of a zone that are worth a look in one slot: steps per start, and price with presses. */
export interface ZoneChoices {
  readonly steps: readonly number[];
  readonly prices: readonly number[];
  readonly minutesPerStep: number;
  readonly costs: RunCosts;
  /** Longest run that the minutes a timer can be set to reach at the option's percent. [steps] */
  readonly most: number;
  /** Price with presses of any run, by its steps; not a number until it is asked for. */
  readonly table: Float64Array;
}

/** A program of the controller, present or empty, and what it may be given. */
export interface Slot {
  readonly present: Program | undefined;
  readonly options: readonly SlotOption[];
}

/** One option before it is priced. */
export interface OptionOfSlot {
  readonly days: PatternClass;
  readonly starts: number;
  readonly percent: number;
  readonly inForce: number;
  readonly presses: number;
}

/** Prices known from other searches of the same month: of runs, and of all zones in a slot on some days, starts and percent. */
export interface KnownPrices {
  readonly runs: Map<string, RunCosts>;
  readonly choices: Map<string, (ZoneChoices | null)[]>;
}

/** What all zones share, and prices known from other searches of the same month. */
interface SharedPrices {
  readonly frame: PlanFrame;
  readonly known: KnownPrices;
}

/**
 * Prices the options of all slots. Runs on the same gaps and starts are priced once.
 *
 * @param zones - The zones. [min]
 * @param presents - The programs that stand in the slots now; undefined is an empty slot. [code]
 * @param optionsOf - What a slot may be given. [code]
 * @param shared - What all zones share, and prices known from other searches of the same month. [code]
 * @returns The slots in their order. [–]
 */
export function pricedSlots(
  zones: readonly PreparedZone[],
  presents: readonly (Program | undefined)[],
  optionsOf: (present: Program | undefined) => readonly OptionOfSlot[],
  shared: SharedPrices,
): readonly Slot[] {
  const { frame, known } = shared;
  const costsOf = (zone: number, { starts, days }: OptionOfSlot): RunCosts => {
    const key = `${zone} ${starts} ${days.gaps.join()}`;
    const costs = known.runs.get(key) ?? runCosts(zones[zone] as PreparedZone, days.gaps, starts, frame);
    known.runs.set(key, costs);
    return costs;
  };
  const priced = (present: Program | undefined, slot: number): readonly SlotOption[] =>
    optionsOf(present).map((option) => {
      const key = `${present ? slot : 'empty'} ${option.starts} ${option.inForce} ${option.days.gaps.join()}`;
      const ofKey = known.choices.get(key) ?? zones.map(() => null);
      known.choices.set(key, ofKey);
      return {
        ...option,
        zones: zones.map((prepared, zone) => {
          if (!option.days.allowed[zone]) return null;
          ofKey[zone] ??= choicesOf(prepared, { present, option, costs: costsOf(zone, option) }, frame);
          return ofKey[zone] ?? null;
        }),
      };
    });
  // Empty slots are alike: they share their options.
  let ofEmpty: readonly SlotOption[] | null = null;
  return presents.map((present, slot) => {
    if (!present) ofEmpty ??= priced(present, slot);
    return { present, options: present ? priced(present, slot) : (ofEmpty ?? []) };
  });
}

interface Offered {
  readonly present: Program | undefined;
  readonly option: OptionOfSlot;
  readonly costs: RunCosts;
}

function choicesOf(prepared: PreparedZone, { present, option, costs }: Offered, frame: PlanFrame): ZoneChoices {
  const found = stationNow(present, prepared.zone.station);
  const most = Math.min(costs.most, stepsAt(frame.mostMinutes, option.inForce, frame));
  const wanted = new Set(costs.bends);
  if (found) wanted.add(stepsAt(found.minutes, option.inForce, frame));
  for (const edge of cycleEdges(prepared, frame, costs.bends.at(-1) ?? 0)) wanted.add(edge);
  const steps = [...wanted].filter((each) => each > 0 && each <= most);
  const { keyPress } = frame.weights;
  const prices = steps.map((each) => costs.priceOf(each) + keyPress * runSetting(prepared, frame, each, option.inForce, found).presses);
  return {
    steps,
    prices,
    minutesPerStep: frame.step * option.starts * option.days.perWeek,
    costs,
    most,
    table: new Float64Array(Math.max(0, ...steps) + 1).fill(Number.NaN),
  };
}

// Where one more step asks for another cycle, presses change: the price is not straight there.
function cycleEdges({ longestCycle }: PreparedZone, { step, cycleSoak }: PlanFrame, last: number): readonly number[] {
  if (!cycleSoak || !Number.isFinite(longestCycle) || longestCycle === 0) return [];
  const inOne = Math.round(longestCycle / step);
  return Array.from({ length: Math.floor(last / inOne) }, (_, at) => [(at + 1) * inOne, (at + 1) * inOne + 1]).flat();
}
