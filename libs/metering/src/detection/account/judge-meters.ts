import type { Gap, MeterVolumes } from '../../account/month-account.js';
import { excessFamily, isExplained } from '../cause.js';
import type { FindingCandidate, FindingKind } from '../finding-candidate.js';
import type { JudgeInput } from './judge-input.js';
import { followsHabit, type RatioHistory, ratioHistory } from './metered-to-programmed.js';
import { worthALook, type Worthy } from '../thresholds.js';

/** A meter that passes less than this share of what is programmed does not deliver: common practice. */
const WELL_UNDER = 0.7;

/**
 * What each meter says against settings and need: unexplained use, not delivering, flow to be tested; overwatered only where programmed is
 * absent. All are one cause, the meter's, and never open twice.
 *
 * @param input - The account, earlier months, thresholds and prices. [code]
 * @param controllers - Candidates of the controllers, which may explain an excess already. [code]
 * @returns At most one candidate for each meter. [code]
 */
export function judgeMeters(input: JudgeInput, controllers: readonly FindingCandidate[]): readonly FindingCandidate[] {
  return input.account.meters.flatMap((meter) => {
    const own = controllers.filter(({ meterId }) => meterId === meter.meterId);
    const found = meter.programmed.litres === null ? overwatered(input, meter, own) : againstSettings(input, meter);
    return found ? [found] : [];
  });
}

interface JudgedRatio {
  readonly kind: FindingKind;
  readonly worthy: Worthy;
}

function overwatered(input: JudgeInput, meter: MeterVolumes, own: readonly FindingCandidate[]): FindingCandidate | null {
  const gap = meter.meteredOverNeeded;
  const worthy = weigh(input, meter, gap, 1);
  if (!worthy || isExplained(worthy.litres, own)) return null;
  return candidate(
    input,
    meter,
    'overwatered',
    worthy,
    { needed: meter.needed, metered: meter.metered, inputs: gap.inputs },
    {
      because: meter.programmed.reason?.code ?? null,
      neededLitres: meter.needed.litres,
      meteredLitres: meter.metered.litres,
    },
  );
}

function againstSettings(input: JudgeInput, meter: MeterVolumes): FindingCandidate | null {
  const gap = meter.unexplainedGap;
  const [metered, programmed] = [meter.metered.litres, meter.programmed.litres];
  if (metered === null || programmed === null) return null;
  const ratio = programmed > 0 ? metered / programmed : null;
  // An estimate is taken from the need: its ratio to metered says nothing about recorded flows.
  const habit = gap.estimate ? null : ratioHistory(input.history, meter.meterId);
  const judged = judgeRatio(input, meter, ratio, habit);
  if (!judged) return null;
  const evidence = { programmed: meter.programmed, metered: meter.metered, ratio, habit, estimate: gap.estimate, inputs: gap.inputs };
  const details = { ratio, usualRatio: habit?.mean ?? null, programmedLitres: programmed, meteredLitres: metered };
  return candidate(input, meter, judged.kind, judged.worthy, evidence, details);
}

function judgeRatio(input: JudgeInput, meter: MeterVolumes, ratio: number | null, habit: RatioHistory | null): JudgedRatio | null {
  const gap = meter.unexplainedGap;
  const judged = (kind: FindingKind, worthy: Worthy | null) => worthy && { kind, worthy };
  if (ratio !== null && habit?.alwaysOff && followsHabit(ratio, habit))
    return judged('flow to be tested', flowToBeTested(input, meter, gap, habit));
  if (ratio === null || ratio > 1) return judged('unexplained use', weigh(input, meter, gap, 1));
  return ratio < WELL_UNDER ? judged('not delivering', weigh(input, meter, gap, -1)) : null;
}

// The habit of many months is surer than one month's flows: its own confidence stands in for the gap's.
function flowToBeTested(input: JudgeInput, { meterId }: MeterVolumes, gap: Gap, habit: RatioHistory): Worthy | null {
  const pricePerLitre = input.pricePerLitre.get(meterId) ?? null;
  const worthy = worthALook({ litres: Math.abs(gap.litres ?? 0), sdLitres: 0, pricePerLitre }, input.thresholds);
  if (!worthy || habit.confidence < input.thresholds.minConfidence) return null;
  return { ...worthy, sdLitres: gap.sdLitres ?? 0, money: null, confidence: habit.confidence };
}

function weigh(input: JudgeInput, { meterId }: MeterVolumes, gap: Gap, sign: 1 | -1): Worthy | null {
  if (gap.litres === null || gap.sdLitres === null) return null;
  // Water that did not flow cost nothing.
  const pricePerLitre = sign > 0 ? (input.pricePerLitre.get(meterId) ?? null) : null;
  return worthALook({ litres: sign * gap.litres, sdLitres: gap.sdLitres, pricePerLitre }, input.thresholds);
}

function candidate(
  { account }: JudgeInput,
  { meterId }: MeterVolumes,
  kind: FindingKind,
  worthy: Worthy,
  ...[evidence, details]: readonly [FindingCandidate['evidence'], FindingCandidate['says']['details']]
): FindingCandidate {
  const family = excessFamily(meterId);
  const zoneIds = account.zones.filter((zone) => zone.meterId === meterId).map(({ zoneId }) => zoneId);
  return {
    kind,
    causeKey: family,
    causeFamily: family,
    meterId,
    controllerId: null,
    zoneIds,
    fromDate: account.firstDate,
    untilDate: account.throughDate ?? account.firstDate,
    ...worthy,
    evidence,
    says: { code: kind, details: { meterId, ...details } },
  };
}
