import type { ReportWord } from '../../words/en/report.js';
import type { Writer } from '../figures.js';
import { monthsOf } from '../period-sums.js';
import type { GivenMonth, ReportPeriod } from '../report-input.js';
import type { ReportMethod, ReportPage, ReportSection } from '../report-model.js';
import { type Savings, savingMethod } from './savings.js';
import { tellsOwnWords } from '../words-of-work.js';

const VOLUMES = ['allowed', 'needed', 'programmed', 'metered'] as const;
/** Filled-in shares below this are not worth a line. */
const LEAST_SHARE = 0.005;

/** How the figures of every page are made, and whose words stand in quotation marks. */
export function methodOf(writer: Writer, sections: readonly ReportSection[]): ReportMethod {
  const { words } = writer;
  const paragraphs = (['method.need', 'method.metered', 'method.uncertainty', 'method.advice'] as const).map((word) => words.say(word));
  if (tellsOwnWords(writer, sections)) paragraphs.push(words.say('method.ownWords'));
  return { title: words.say('method.title'), paragraphs };
}

/** How the saving of a property was computed. */
export function methodOfSaving(writer: Writer, savings: Savings): ReportMethod {
  const saving = savingMethod(writer, savings);
  return { title: writer.words.say('method.savingTitle'), paragraphs: saving === null ? [] : [saving] };
}

/** Page 3: which days, volumes and months are whole, filled in, or not known. */
export function qualityOf(writer: Writer, months: readonly GivenMonth[], period: ReportPeriod): ReportPage['quality'] {
  const { say } = writer.words;
  const lines = monthsOf(period).flatMap((month) => {
    const name = writer.formats.month(month);
    const found = months.find((each) => each.month === month);
    return found ? linesOf(writer, name, found) : [say('quality.noAccount', { month: name })];
  });
  return { title: say('quality.title'), lines: lines.length ? lines : [say('quality.all')] };
}

function linesOf({ words, formats }: Writer, month: string, account: GivenMonth): string[] {
  const { daysCovered: days, daysInMonth: of } = account;
  const covered = days < of ? [words.say('quality.covered', { month, days, of })] : [];
  const volumes = VOLUMES.flatMap((name) => {
    const { litres, estimatedShare, reason } = account[name];
    const volume = words.say(`figure.${name}` as ReportWord);
    if (litres === null) return [words.say('quality.missing', { month, volume, reason: words.because(reason) })];
    if (estimatedShare < LEAST_SHARE) return [];
    return [words.say('quality.estimated', { month, volume, share: formats.percent(estimatedShare) })];
  });
  return [...covered, ...volumes];
}
