import { isWithin, largestOf } from './drawings.js';
import type { Writer } from './figures.js';
import { type PeriodSums, sum } from './period-sums.js';
import type { ReportPeriod } from './report-input.js';

/** July 2026; or May 2026 to July 2026. */
export const periodInWords = ({ formats, words }: Writer, { from, until }: ReportPeriod): string =>
  from === until ? formats.month(from) : words.say('period', { from: formats.month(from), until: formats.month(until) });

/** What a property took against what its plants needed, in one sentence; what is not known is said so. */
export function verdictOf(writer: Writer, name: string, period: string, sums: PeriodSums, confidence: number): string {
  const { words, formats } = writer;
  const { metered, needed, aboveNeed } = sums;
  const { said, between } = writer.volumes(largestOf([sums]));
  if (metered.litres === null) return words.say('verdict.notMetered', { name, period, reason: words.because(metered.reason) });
  const values = { name, period, metered: said(metered.litres), needed: said(needed.litres) };
  if (needed.litres === null || aboveNeed.litres === null)
    return words.say('verdict.noNeed', { ...values, reason: words.because(needed.reason) });
  if (isWithin(aboveNeed, confidence)) return words.say('verdict.near', values);
  const percent = needed.litres > 0 ? formats.percent(Math.abs(aboveNeed.litres) / needed.litres) : '–';
  const money = aboveNeed.money === null ? '' : words.say('verdict.money', { money: formats.money(Math.abs(aboveNeed.money)) });
  return words.say(aboveNeed.litres > 0 ? 'verdict.above' : 'verdict.below', {
    ...values,
    gap: said(between(aboveNeed.litres, metered.litres, needed.litres)),
    percent,
    money,
  });
}

/** What all properties of a client took, in one sentence; those that are not known are counted, never taken as zero. */
export function verdictOfAll(writer: Writer, period: string, all: readonly PeriodSums[]): string {
  const known = all.filter(({ metered, needed }) => metered.litres !== null && needed.litres !== null);
  const metered = sum(known.map((each) => each.metered.litres));
  const needed = sum(known.map((each) => each.needed.litres));
  const count = all.length;
  if (metered === null || needed === null) return writer.words.say('verdict.none', { period, count });
  const { said } = writer.volumes(Math.max(metered, needed));
  const values = { period, count, known: known.length, metered: said(metered), needed: said(needed) };
  return writer.words.say(known.length === count ? 'verdict.all' : 'verdict.some', values);
}
