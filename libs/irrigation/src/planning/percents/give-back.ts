import type { Program } from '../../settings/settings-fact.js';
import { judgeWithinLimits } from '../judge/judge-plan.js';
import { keepsAll, type PlanJudgement } from '../judge/plan-judgement.js';
import type { Placing } from '../layout/place-starts.js';
import type { PlanInput } from '../plan-input.js';

/** Programs whose percents were cut so that all is kept, and what they would be without the cut. */
export interface CutPercents {
  readonly programs: readonly Program[];
  readonly wished: readonly number[];
  readonly percents: readonly number[];
  readonly judgement: PlanJudgement;
}

/**
 * Gives programs back what a cut of all percents by one share took from them needlessly: one program after the other, the thirstiest first, as
 * near to its wished percent as all rules and limits allow, and only where that costs less.
 *
 * @param input - The controller and the month; only a timer with a percent for each program gives back. [code]
 * @param cut - Programs before placing, their wished percents and those that keep all. [%]
 * @param choices - Percents that the timer has, rising. [%]
 * @param placing - Where the programs are put. [code]
 * @returns Programs as they are placed with what they do; null where nothing can be given back. [L]
 */
export function giveBack(input: PlanInput, cut: CutPercents, choices: readonly number[], placing: Placing): Kept | null {
  let best: Kept | null = null;
  let { percents } = cut;
  for (const at of thirstiestFirst(cut)) {
    const [now, wished] = [percents[at] as number, cut.wished[at] as number];
    const larger = choices.filter((choice) => choice > now && choice <= wished);
    const before = percents;
    const withPercent = (percent: number) => before.map((each, other) => (other === at ? percent : each));
    const found = largestKept(larger, (percent) => keptWith(input, cut.programs, withPercent(percent), placing));
    if (!found || found.kept.judgement.cost >= (best ?? cut).judgement.cost) continue;
    best = found.kept;
    percents = withPercent(found.percent);
  }
  return best;
}

interface Kept {
  readonly programs: readonly Program[];
  readonly judgement: PlanJudgement;
}

function keptWith(input: PlanInput, programs: readonly Program[], percents: readonly number[], placing: Placing): Kept | null {
  const where = placing(programs.map((program, at) => ({ ...program, adjustPercent: percents[at] as number })));
  const judgement = where && judgeWithinLimits(input, where);
  return judgement && keepsAll(judgement) ? { programs: where, judgement } : null;
}

// By halving: where a percent keeps all, the smaller ones mostly do.
function largestKept(rising: readonly number[], kept: (percent: number) => Kept | null) {
  let found: { readonly percent: number; readonly kept: Kept } | null = null;
  let [low, high] = [0, rising.length - 1];
  let at = high;
  while (low <= high) {
    const percent = rising[at] as number;
    const now = kept(percent);
    if (now) [found, low] = [{ percent, kept: now }, at + 1];
    else high = at - 1;
    at = Math.floor((low + high) / 2);
  }
  return found;
}

function thirstiestFirst({ programs, judgement }: CutPercents): readonly number[] {
  const unmet = programs.map(({ stations }) =>
    judgement.zones.reduce((sum, zone) => (stations.some(({ station }) => station === zone.station) ? sum + zone.unmetLitres : sum), 0),
  );
  return programs.map((_, at) => at).sort((a, b) => (unmet[b] as number) - (unmet[a] as number));
}
