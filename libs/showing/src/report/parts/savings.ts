import { type AvoidedUse, avoidedUse } from '@rillbook/metering/savings/avoided-use.js';
import { type BeforeAndAfter, beforeAndAfter } from '@rillbook/metering/savings/before-and-after.js';
import { fitNeedBaseline, type NeedBaseline } from '@rillbook/metering/savings/need-baseline.js';
import { fitLimits } from '@rillbook/metering/statistics/fit-limits.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import type { Writer } from '../figures.js';
import { nextMonth } from '../period-sums.js';
import type { GivenProperty, ReportPeriod } from '../report-input.js';
import type { Figure, ReportLine } from '../report-model.js';
import type { ReportWord } from '../../words/en/report.js';
import { periodInWords } from './verdict.js';

/** The share of cases that a saving's band is to hold. */
const CONFIDENCE = 0.9;

/** What a property saved in a period, or why that cannot be told. */
export interface Savings {
  readonly baseline: NeedBaseline | null;
  readonly avoided: AvoidedUse | null;
  readonly split: BeforeAndAfter | null;
  /** a word of the report and its values, where nothing can be told */
  readonly refusal: { readonly word: ReportWord; readonly values: Readonly<Record<string, string | number>> } | null;
}

const refused = (word: ReportWord, values: Readonly<Record<string, string | number>> = {}): Savings => ({
  baseline: null,
  avoided: null,
  split: null,
  refusal: { word, values },
});

const REFUSALS = ['BASELINE_TOO_SHORT', 'BASELINE_NEED_CONSTANT', 'BASELINE_WITHOUT_USE'] as const;

/** The saving of a period against the weather-corrected need, never against last year's number. */
export function savingsOf({ months, firstWork }: GivenProperty, period: ReportPeriod): Savings {
  if (firstWork === null || firstWork > period.until) return refused('saved.noWork');
  const known = months.map((month) => ({
    month: month.month,
    days: month.daysInMonth,
    neededLitres: month.daysCovered === month.daysInMonth ? month.needed.litres : null,
    meteredLitres: month.daysCovered === month.daysInMonth ? month.metered.litres : null,
  }));
  const split = beforeAndAfter(known, firstWork, period);
  if (split.after.length === 0) return refused('saved.noMonths', { month: firstWork });
  try {
    const baseline = fitNeedBaseline(split.before);
    return { baseline, avoided: avoidedUse(baseline, split.after, CONFIDENCE), split, refusal: null };
  } catch (problem) {
    const code = problem instanceof DomainError ? REFUSALS.find((one) => one === problem.code) : undefined;
    if (!code || !(problem instanceof DomainError)) throw problem;
    return refused(`saved.${code}`, problem.details as Readonly<Record<string, string | number>>);
  }
}

/** The figures of a saving: the sentence and the table both take these. */
export function savingFigures(writer: Writer, { avoided }: Savings, pricePerLitre: number | null): Figure[] {
  if (!avoided) return [];
  const { figure, asWritten } = writer.volumes(avoided.expectedLitres);
  const label = (id: string): string => writer.words.say(`figure.${id}` as ReportWord);
  const money = pricePerLitre === null ? null : asWritten(avoided.litres) * pricePerLitre;
  return [
    figure({ id: 'expected', label: label('expected') }, avoided.expectedLitres),
    figure({ id: 'saved', label: label('saved') }, avoided.litres),
    figure({ id: 'halfWidth', label: label('halfWidth') }, avoided.halfWidthLitres),
    ...(money === null || pricePerLitre === null
      ? []
      : [
          writer.money({ id: 'savedMoney', label: label('savedMoney') }, money),
          writer.money({ id: 'halfWidthMoney', label: label('halfWidthMoney') }, asWritten(avoided.halfWidthLitres) * pricePerLitre),
        ]),
  ];
}

/** What it saved, in sentences. */
export function savingLines(writer: Writer, savings: Savings, property: GivenProperty): ReportLine[] {
  const { words, formats } = writer;
  const line = (id: string, says: string): ReportLine => ({ id, says, figures: [], photos: [] });
  const { avoided, refusal, split } = savings;
  if (refusal) {
    const { month } = refusal.values;
    const values = typeof month === 'string' ? { ...refusal.values, month: formats.month(month) } : refusal.values;
    // Said where nothing is: it is no line of what was saved.
    return refusal.word === 'saved.noWork' ? [] : [line('saved.refusal', words.say(refusal.word, values))];
  }
  if (!avoided || !split || property.firstWork === null) return [];
  const figures = savingFigures(writer, savings, property.pricePerLitre);
  const says = line('saved', savingSentence(writer, avoided, property.firstWork, property.pricePerLitre));
  const list = (months: readonly string[]): string =>
    runsOf(months)
      .map((run) => periodInWords(writer, run))
      .join(', ');
  return [
    { ...says, figures },
    ...(avoided.monthsOutsideRange.length
      ? [line('saved.outside', words.say('saved.outside', { months: list(avoided.monthsOutsideRange) }))]
      : []),
    ...(split.leftOut.length ? [line('saved.leftOut', words.say('saved.leftOut', { months: list(split.leftOut) }))] : []),
  ];
}

/** Months that follow each other are told as one stretch. */
function runsOf(months: readonly string[]): ReportPeriod[] {
  return months.reduce<ReportPeriod[]>((runs, month) => {
    const last = runs.at(-1);
    if (last && nextMonth(last.until) === month) return [...runs.slice(0, -1), { from: last.from, until: month }];
    return [...runs, { from: month, until: month }];
  }, []);
}

function savingSentence({ words, formats, volumes }: Writer, avoided: AvoidedUse, firstWork: string, pricePerLitre: number | null): string {
  const { said, asWritten } = volumes(avoided.expectedLitres);
  const size = Math.abs(avoided.litres);
  const [low, high] = [Math.max(0, size - avoided.halfWidthLitres), size + avoided.halfWidthLitres];
  const inMoney = (litres: number): string => formats.money(asWritten(litres) * (pricePerLitre ?? 0));
  const money = pricePerLitre === null ? '' : words.say('saved.money', { money: inMoney(size) });
  const range = pricePerLitre === null ? '' : words.say('saved.range', { low: inMoney(low), high: inMoney(high) });
  const values = {
    month: formats.month(firstWork),
    litres: (avoided.litres < 0 && !avoided.isSure ? '−' : '') + said(size),
    half: said(avoided.halfWidthLitres),
    low: said(low),
    high: said(high),
    range,
    money,
  };
  if (!avoided.isSure) return words.say('saved.unsure', values);
  return words.say(avoided.litres > 0 ? 'saved.sure' : 'saved.more', values);
}

/** How the saving was computed, and how well its model fits; null where none could be told. */
export function savingMethod({ words, formats }: Writer, { baseline }: Savings): string | null {
  if (!baseline) return null;
  const { fit, months } = baseline;
  return words.say('method.saving', {
    months: months.length,
    from: formats.month(months[0]?.month),
    until: formats.month(months.at(-1)?.month),
    cvRmse: formats.percent(fit.adjustedCvRmse, 1),
    nmbe: formats.percent(fit.adjustedNmbe, 1),
    target: `${formats.percent(fitLimits.monthly.cvRmse)} / ${formats.percent(fitLimits.monthly.nmbe)}`,
  });
}
