import { judgePlan } from '../judge/judge-plan.js';
import type { PlanJudgement } from '../judge/plan-judgement.js';
import type { PlanInput } from '../plan-input.js';
import type { Program } from '../../settings/settings-fact.js';
import { leastChange, type Offer, percentChange } from './least-change.js';
import { planController } from './plan-controller.js';

/** Waste above this share of the need is worth other days on the card. [–] */
const WORTH_OTHER_DAYS = 0.25;

/** A month on the card: the percents, or where that month's rules ask for it other days and starts too; none where nothing keeps them, or off. [L] */
export interface CardMonth {
  readonly month: string;
  readonly offer: Offer | null;
  readonly isOff: boolean;
  readonly neededLitres: number;
}

/** A year of a controller on one card: programs entered once, and what is turned month by month. */
export interface YearCard {
  readonly thirstiest: string;
  readonly programs: readonly Program[];
  readonly judgement: PlanJudgement;
  readonly months: readonly CardMonth[];
}

/**
 * The card that stays in a controller's cabinet: the full program of the thirstiest month, entered once, and the percents of every month. A month whose watering would cost more than it saves is off.
 *
 * A timer that keeps a percent for each month gets them from here, so what its own table says now is left out of account.
 *
 * @param inputs - The controller in each month, zones alike in all. [L]
 * @returns The card, or null where no month is given. [%]
 */
export function yearCard(inputs: readonly PlanInput[]): YearCard | null {
  const plain = inputs.map(withoutTable);
  const [first, ...others] = plain;
  if (!first) return null;
  const thirstiest = others.reduce((most, input) => (needOf(input) > needOf(most) ? input : most), first);
  const { full } = planController(thirstiest);
  const programs = full.programs.map((program) => countedFrom(program, `${first.month}-01`));
  const months = plain.map((input): CardMonth => {
    const from = { ...input, present: programs };
    const offer = turned(from);
    const dry = judgePlan({ ...input, present: null }, []);
    return { month: input.month, offer, isOff: offer !== null && dry.cost <= offer.judgement.cost, neededLitres: dry.neededLitres };
  });
  return { thirstiest: thirstiest.month, programs, judgement: full.judgement, months };
}

// Percents alone are turned fastest: other days only where percents fit nothing, or give far more than is needed.
function turned(input: PlanInput): Offer | null {
  const percents = percentChange(input);
  if (percents && percents.judgement.wastedLitres <= WORTH_OTHER_DAYS * percents.judgement.neededLitres) return percents;
  return leastChange(input) ?? percents;
}

// A program of every so many days runs from its first day on: the card's year begins earlier.
function countedFrom(program: Program, from: string): Program {
  return program.days.kind === 'every' ? { ...program, days: { ...program.days, from } } : program;
}

function withoutTable(input: PlanInput): PlanInput {
  const table = input.traits.monthlyAdjustPercent;
  if (!table) return input;
  return { ...input, traits: { ...input.traits, monthlyAdjustPercent: null, adjustScope: 'controller' } };
}

function needOf({ zones }: PlanInput): number {
  return zones.reduce((sum, { needLitresPerDay }) => sum + needLitresPerDay, 0);
}
