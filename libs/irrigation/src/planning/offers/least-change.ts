import { daysOfMonth } from '../../calendar/local-date.js';
import { sameDays } from '../../settings/settings-differences.js';
import type { Program, ProgramDays } from '../../settings/settings-fact.js';
import { patternOf } from '../days/day-pattern.js';
import { classOfPattern, intervalsWithin, type PatternClass, patternClasses, weeksToTry } from '../days/pattern-classes.js';
import { type RulesOfZone, rulesInMonth, rulesOfZone } from '../days/rules-of-zone.js';
import type { BreachKind } from '../../rules/rule-breach.js';
import { judgePlan, judgeWithinLimits } from '../judge/judge-plan.js';
import { keepsAll, type PlanJudgement } from '../judge/plan-judgement.js';
import { traitsOfMonth } from '../judge/plan-runs.js';
import type { PlanInput } from '../plan-input.js';
import type { Placing } from '../layout/place-starts.js';
import { type CutPercents, giveBack } from '../percents/give-back.js';
import { startsMoved } from './starts-moved.js';
import { dayOfProgram, priceOfProgram } from './start-effect.js';

/** What a controller's percent can be where nobody has said. [%] */
const MOST_PERCENT = 200;
/** Unmet need above this share is worth moving start times for. [–] */
const WORTH_MOVING = 0.02;
/** What no percent mends. */
const BY_DAYS: readonly BreachKind[] = ['must not be watered', 'day not allowed', 'too many days a week'];
/** Shares of the wished percents that are tried, until one keeps all. [–] */
const SHARES = [1, 0.95, 0.9, 0.8, 0.7, 0.6, 0.5, 0.35, 0.2];
/** Days of programs that are tried, cheapest first, until one keeps all rules and limits. */
const MOST_TRIED = 8;

/** Programs that are offered, and what they do. */
export interface Offer {
  readonly kind: 'as set' | 'percent' | 'percent and days' | 'percent and starts' | 'percent, days and starts' | 'full';
  readonly programs: readonly Program[];
  readonly judgement: PlanJudgement;
}

/**
 * The least change: percents only, or percents and days, whichever costs less with its presses; nothing else is touched. Where neither ends
 * within the hours, or only with thirst, start times may be moved as well.
 *
 * Of each program the percent is chosen by what it leaves unmet and wastes in its zones, and never so that anything runs off. Where a timer
 * has one percent for all programs they share it.
 *
 * @param input - The controller, its present programs and the month. [code]
 * @returns The offer, or null where no percent, days and starts keep every rule and limit, or the present programs are not known. [–]
 */
export function leastChange(input: PlanInput): Offer | null {
  const { present } = input;
  if (!present?.length) return null;
  const asSet = { kind: 'as set' as const, programs: present, judgement: judgePlan(input, present) };
  const wishes = wishedDays(input, present);
  const placedBy = (before: Offer | null, placing: Placing) => {
    const ofPercent = cheapest([before, percentOnly(input, present, placing)]);
    return cheapestOfDays(input, wishes, ofPercent, placing);
  };
  const offer = placedBy(keepsAll(asSet.judgement) ? asSet : null, (programs) => programs);
  if (offer && offer.judgement.unmetLitres <= WORTH_MOVING * offer.judgement.neededLitres) return offer;
  return placedBy(offer, startsMoved(input));
}

/**
 * The percents alone that cost least: days and starts stay.
 *
 * @param input - The controller, its present programs and the month. [code]
 * @returns The offer, or null where no percent keeps every rule and limit. [–]
 */
export function percentChange(input: PlanInput): Offer | null {
  const { present } = input;
  if (!present?.length) return null;
  return cheapest([
    { kind: 'as set', programs: present, judgement: judgePlan(input, present) },
    percentOnly(input, present, (programs) => programs),
  ]);
}

function cheapest(offers: readonly (Offer | null)[]): Offer | null {
  return offers
    .filter((offer): offer is Offer => offer !== null && keepsAll(offer.judgement))
    .reduce<Offer | null>((best, offer) => (best && best.judgement.cost <= offer.judgement.cost ? best : offer), null);
}

function percentOnly(input: PlanInput, present: readonly Program[], placing: Placing): Offer | null {
  const choices = percentChoices(input);
  const gaps = present.map(({ days }) => patternOf(days, `${input.month}-01`).gaps);
  const wished = bestPercents(input, present, (at) =>
    pricedPercents(input, present[at] as Program, choices)(gaps[at] as readonly number[]),
  );
  return largestThatKeep(input, { programs: present, wished, hasDays: false }, choices, placing);
}

// Cut percents only cost more than those wished for: what is wished dearer than the best so far is no better. Where programs share a station a
// wish is priced as if each watered it alone, and bounds nothing.
function cheapestOfDays(input: PlanInput, wishes: readonly PricedWish[], before: Offer | null, placing: Placing): Offer | null {
  const choices = percentChoices(input);
  let best = before;
  for (const wish of wishes.slice(0, MOST_TRIED)) {
    if (best && wish.price >= best.judgement.cost && !sharesStations(wish.programs)) break;
    best = cheapest([best, largestThatKeep(input, wish, choices, placing)]);
  }
  return best;
}

// Days and percents for each set of weekdays that rules leave, the cheapest first.
function wishedDays(input: PlanInput, present: readonly Program[]): readonly PricedWish[] {
  const rules = rulesInMonth(input.rules, input.month, input.place);
  const zones = input.zones.map((zone) => rulesOfZone(rules, zone));
  const choices = percentChoices(input);
  const from = `${input.month}-01`;
  const pricesOf = present.map((program) => pricedPercents(input, program, choices));
  const wishes = weeksOf(zones, present, from).flatMap((week): readonly PricedWish[] => {
    const classes = patternClasses(zones, week, { from, everyDays: intervalsWithin(input.zones) });
    const withDays = present.map((program, index) => {
      const own = zonesOf(input, program);
      return candidateDays(zones, classes, { program, week, from })
        .filter(({ allowed }) => own.every((zone) => allowed[zone]))
        .map(({ days, gaps }) => {
          const presses = input.weights.keyPress * Number(!sameDays(days, program.days));
          const at = (pricesOf[index]?.(gaps) ?? []).map(({ percent, price }) => ({ percent, price: price + presses }));
          return { days, at };
        });
    });
    if (withDays.some((of) => of.length === 0)) return [];
    const best = sharesPercent(input, present)
      ? daysForOnePercent(withDays)
      : withDays.map((of) => of.reduce((cheapestDays, each) => (least(each.at) < least(cheapestDays.at) ? each : cheapestDays)));
    const moved = present.map((program, at) => ({ ...program, days: best[at]?.days ?? program.days }));
    const wished = bestPercents(input, moved, (at) => best[at]?.at ?? []);
    const price = wished.reduce((sum, percent, at) => sum + (best[at]?.at.find((each) => each.percent === percent)?.price ?? 0), 0);
    return [{ programs: moved, wished, hasDays: true, price }];
  });
  return wishes.sort((one, other) => one.price - other.price);
}

interface PricedDays {
  readonly days: ProgramDays;
  readonly at: readonly PricedPercent[];
}

// Where programs share their percent, the days of all are chosen together, for each percent those that cost least at it: a percent that is right
// for one program's own best days may be far too much for another's.
function daysForOnePercent(withDays: readonly (readonly PricedDays[])[]): readonly PricedDays[] {
  const percents = withDays[0]?.[0]?.at.length ?? 0;
  let [best, price] = [withDays.flatMap((of) => of.slice(0, 1)), Number.POSITIVE_INFINITY];
  for (let index = 0; index < percents; index += 1) {
    const priceOf = (days: PricedDays) => days.at[index]?.price ?? Number.POSITIVE_INFINITY;
    const chosen = withDays.map((of) => of.reduce((least, each) => (priceOf(each) < priceOf(least) ? each : least)));
    const sum = chosen.reduce((total, days) => total + priceOf(days), 0);
    if (sum < price) [best, price] = [chosen, sum];
  }
  return best;
}

interface OfProgram {
  readonly program: Program;
  readonly week: number;
  readonly from: string;
}

// The days that a program has now are kept where rules let them be: no key is pressed for them.
function candidateDays(zones: readonly RulesOfZone[], classes: readonly PatternClass[], { program, week, from }: OfProgram) {
  const now = classOfPattern(zones, week, patternOf(program.days, from));
  return [
    ...(now ? [{ ...now, days: program.days }] : []),
    ...classes.map((of) => ({ ...of, days: of.patterns[0]?.days ?? program.days })),
  ];
}

interface PricedPercent {
  readonly percent: number;
  readonly price: number;
}

function least(at: readonly PricedPercent[]): number {
  return at.reduce((best, { price }) => Math.min(best, price), Number.POSITIVE_INFINITY);
}

function percentChoices({ traits, present }: PlanInput): readonly number[] {
  const step = traits.adjustStepPercent ?? 1;
  const most = Math.floor((traits.maxAdjustPercent ?? MOST_PERCENT) / step + 1e-9);
  const steps = Array.from({ length: most }, (_, at) => (at + 1) * step);
  return [...new Set([...steps, ...(present ?? []).map(({ adjustPercent }) => adjustPercent)])].sort((a, b) => a - b);
}

// One percent for all on a timer that has one, or where programs share a station; else each program its own.
function sharesPercent({ traits }: PlanInput, programs: readonly Program[]): boolean {
  return traits.adjustScope !== 'program' || sharesStations(programs);
}

function sharesStations(programs: readonly Program[]): boolean {
  const stations = programs.flatMap((program) => [...new Set(program.stations.map(({ station }) => station))]);
  return new Set(stations).size !== stations.length;
}

function bestPercents(
  input: PlanInput,
  programs: readonly Program[],
  pricesOf: (at: number) => readonly PricedPercent[],
): readonly number[] {
  const prices = programs.map((_, at) => pricesOf(at));
  const best = (at: readonly PricedPercent[]) =>
    at.reduce((chosen, each) => (each.price < chosen.price ? each : chosen), {
      percent: at[0]?.percent ?? 100,
      price: Number.POSITIVE_INFINITY,
    }).percent;
  if (!sharesPercent(input, programs)) return prices.map(best);
  const together = (prices[0] ?? []).map(({ percent }, index) => ({
    percent,
    price: prices.reduce((sum, of) => sum + (of[index]?.price ?? Number.POSITIVE_INFINITY), 0),
  }));
  return programs.map(() => best(together));
}

// What a day gives at each percent is the same on any days: it is worked out once.
function pricedPercents(
  input: PlanInput,
  program: Program,
  choices: readonly number[],
): (gaps: readonly number[]) => readonly PricedPercent[] {
  const traits = traitsOfMonth(input.traits, input.month);
  const { days } = daysOfMonth(input.month);
  const at = choices.map((percent) => ({
    percent,
    day: dayOfProgram(input, traits, { ...program, adjustPercent: percent }),
    presses: input.weights.keyPress * Number(percent !== program.adjustPercent),
  }));
  return (gaps) => at.map(({ percent, day, presses }) => ({ percent, price: priceOfProgram(day, gaps, input.weights, days) + presses }));
}

interface Wish {
  readonly programs: readonly Program[];
  readonly wished: readonly number[];
  readonly hasDays: boolean;
}

interface PricedWish extends Wish {
  readonly price: number;
}

// Longer runs may leave the hours or meet a rule: all percents are cut alike until all is kept, then given back program by program.
function largestThatKeep(input: PlanInput, wish: Wish, choices: readonly number[], placing: Placing): Offer | null {
  const { programs, wished, hasDays } = wish;
  for (const share of SHARES) {
    const percents = wished.map((percent) => choices.filter((choice) => choice <= percent * share + 1e-9).at(-1));
    if (!percents.every((percent) => percent !== undefined)) return null;
    const where = placing(programs.map((program, at) => ({ ...program, adjustPercent: percents[at] as number })));
    const judgement = where && judgeWithinLimits(input, where);
    if (!judgement) continue;
    if (keepsAll(judgement)) {
      const cut = { programs, wished, percents, judgement };
      const given = share < 1 ? givenBack(input, cut, choices, placing) : null;
      const best = given ?? { programs: where, judgement };
      return { kind: kindOf(input.present ?? [], best.programs, hasDays), ...best };
    }
    if (isBrokenByDays(judgement)) return null;
  }
  return null;
}

function givenBack(input: PlanInput, cut: CutPercents, choices: readonly number[], placing: Placing) {
  return input.traits.adjustScope === 'program' ? giveBack(input, cut, choices, placing) : null;
}

// Shorter runs on the same days break such a rule alike.
function isBrokenByDays({ breaches }: PlanJudgement): boolean {
  return breaches.some(({ kind }) => BY_DAYS.includes(kind));
}

function kindOf(present: readonly Program[], programs: readonly Program[], hasDays: boolean): Offer['kind'] {
  const movesStarts = programs.some(({ starts }, at) => starts.join() !== present[at]?.starts.join());
  if (hasDays) return movesStarts ? 'percent, days and starts' : 'percent and days';
  return movesStarts ? 'percent and starts' : 'percent';
}

function zonesOf({ zones }: PlanInput, program: Program): readonly number[] {
  return zones.flatMap(({ station }, at) => (program.stations.some((run) => run.station === station && run.minutes > 0) ? [at] : []));
}

function weeksOf(zones: readonly RulesOfZone[], present: readonly Program[], from: string): readonly number[] {
  const ruled = zones.filter(({ daysPerWeek, forbidden }) => daysPerWeek < 7 && !forbidden);
  const most = Math.min(7, ...ruled.map(({ daysPerWeek }) => daysPerWeek));
  const allowed = ruled.reduce((mask, { mask: of }) => mask | of, 0);
  return weeksToTry(
    most,
    allowed,
    present.map(({ days }) => patternOf(days, from).mask),
  );
}
