import { isAlike } from '../is-alike.js';
import { moneyOf } from './money-of.js';
import { isWithin, largestOf } from './drawings.js';
import type { VolumeFigures, Writer } from '../figures.js';
import { type PeriodSums, sumsOfAll } from '../period-sums.js';
import type { ReportPeriod } from '../report-input.js';
import type { ReportWord } from '../../words/en/report.js';

/** July 2026; or May 2026 to July 2026. */
export const periodInWords = ({ formats, words }: Writer, { from, until }: ReportPeriod): string =>
  from === until ? formats.month(from) : words.say('period', { from: formats.month(from), until: formats.month(until) });

/** The period within a sentence: for July 2026; for July 2025 to June 2026. */
export const duringInWords = ({ formats, words }: Writer, { from, until }: ReportPeriod): string =>
  from === until
    ? words.say('during.month', { month: formats.month(from) })
    : words.say('during.months', monthsInWords(formats, from, until));

/** What a verdict is of. */
export interface Judged {
  readonly name: string;
  readonly when: string;
  readonly sums: PeriodSums;
  readonly volumes: VolumeFigures;
  readonly confidence: number;
}

/** In July 2026; from May 2026 to July 2026; a period whose last month is not over says up to which day. */
export function whenInWords({ formats, words }: Writer, { from, until }: ReportPeriod, through: string | null): string {
  const when =
    from === until
      ? words.say('when.month', { month: formats.month(from) })
      : words.say('when.months', monthsInWords(formats, from, until));
  return through === null ? when : words.say('when.upTo', { when, day: formats.dayInWords(through) });
}

const monthsInWords = (formats: Writer['formats'], from: string, until: string) => ({
  from: formats.month(from),
  until: formats.month(until),
});

/** Whether a volume is written as nothing. */
const isNone = (litres: number, { column, step }: VolumeFigures): boolean => Math.abs(column.fromLitres(litres)) < step / 2;

/** What a property took against what its plants needed, in one sentence; what is not known is said so. */
export function verdictOf(writer: Writer, { name, when, sums, volumes, confidence }: Judged): string {
  const { words, formats } = writer;
  const { metered, needed, aboveNeed } = sums;
  const { said, between } = volumes;
  if (metered.litres === null) return words.say('verdict.notMetered', { name, when, reason: words.because(metered.reason) });
  const values = { name, when, metered: said(metered.litres), needed: said(needed.litres) };
  if (needed.litres === null || aboveNeed.litres === null)
    return words.say('verdict.noNeed', { ...values, reason: words.because(needed.reason) });
  if (isWithin(aboveNeed, confidence)) return words.say(wordWithin(aboveNeed.litres, needed.litres, volumes), values);
  const share = needed.litres > 0 ? ` (${formats.percent(Math.abs(aboveNeed.litres) / needed.litres)})` : '';
  const gap = between(aboveNeed.litres, metered.litres, needed.litres);
  const amount = moneyOf(aboveNeed, gap);
  const money = amount === null ? '' : words.say('verdict.money', { money: formats.money(Math.abs(amount)) });
  return words.say(aboveNeed.litres > 0 ? 'verdict.above' : 'verdict.below', {
    ...values,
    gap: said(gap),
    share,
    money,
  });
}

/** What is said of a gap that is smaller than what can be measured. */
function wordWithin(gap: number, needed: number, volumes: VolumeFigures): ReportWord {
  if (isNone(needed, volumes)) return 'verdict.nearNone';
  if (isAlike(gap, needed)) return 'verdict.near';
  return gap > 0 ? 'verdict.unsureAbove' : 'verdict.unsureBelow';
}

/** What all properties of a client took, in one sentence; those that are not known are counted, never taken as zero. */
export function verdictOfAll(writer: Writer, when: string, all: readonly PeriodSums[]): string {
  const known = all.filter(({ metered, needed }) => metered.litres !== null && needed.litres !== null);
  const together = sumsOfAll(known);
  const [metered, needed] = [together.metered.litres, together.needed.litres];
  const count = all.length;
  if (metered === null || needed === null) return writer.words.say('verdict.none', { when, count });
  const { said } = writer.volumes(largestOf([together]));
  const values = { when, count, known: known.length, metered: said(metered), needed: said(needed) };
  if (known.length === count) return writer.words.say('verdict.all', values);
  const others = writer.words.say(count - known.length === 1 ? 'verdict.other' : 'verdict.others');
  return writer.words.say(known.length === 1 ? 'verdict.someOne' : 'verdict.some', { ...values, others });
}
