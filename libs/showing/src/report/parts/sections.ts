import type { ReportWord } from '../../words/en/report.js';
import { fill } from '../../words/fill.js';
import type { FigureOf, Writer } from '../figures.js';
import { nextMonth } from '../period-sums.js';
import type { GivenFinding, GivenProperty, GivenWork, ReportPeriod } from '../report-input.js';
import type { Figure, ReportLine, ReportSection } from '../report-model.js';
import { type Savings, savingLines } from './savings.js';
import { inZones, wordsOfDone, wordsOfOrder } from '../words-of-work.js';

const MOST_FOUND = 6;
const MOST_RECOMMENDED = 3;
const MONTHS_OF_YEAR = 12;
/** Under this an amount of money is written as 0, and left out. */
const LEAST_MONEY = 0.5;
/** Findings that are the office's business, not the client's. */
const INTERNAL = new Set(['doubtful reading', 'stale']);
/** Findings that say what is not known: their litres are neither water lost nor water saved. */
const WITHOUT_AMOUNT = new Set(['flow to be tested']);

/** What the sections stand beside. */
interface Beside {
  readonly savings: Savings;
  /** whether the meter passed more than the programs explain */
  readonly isUnexplained: boolean;
}

/** What was found, done, saved and recommended. */
export function sectionsOf(
  writer: Writer,
  property: GivenProperty,
  period: ReportPeriod,
  { savings, isUnexplained }: Beside,
): ReportSection[] {
  const { say } = writer.words;
  const section = (id: ReportSection['id'], lines: ReportLine[], none: string): ReportSection => ({
    id,
    title: say(`${id}.title`),
    lines,
    none,
  });
  const findings = property.findings.filter(({ kind, state }) => !INTERNAL.has(kind) && state !== 'dismissed');
  return [
    section(
      'found',
      foundLines(writer, findingsIn(findings, period), lastDayOf(period)),
      say(isUnexplained ? 'found.noCause' : 'found.none'),
    ),
    section('done', doneLines(writer, property.work, period), say('done.none')),
    section('saved', savingLines(writer, savings, property), say('saved.noWork')),
    section(
      'recommended',
      recommendedLines(writer, property.work, { findings, after: `${nextMonth(period.until)}-01` }),
      say('recommended.none'),
    ),
  ];
}

/** What was seen on some day of the period. */
export function findingsIn(findings: readonly GivenFinding[], { from, until }: ReportPeriod): GivenFinding[] {
  const [first, after] = [`${from}-01`, `${nextMonth(until)}-01`];
  return findings.filter(({ fromOn, untilOn }) => (fromOn ?? first) < after && (untilOn ?? first) >= first);
}

const byWorth = (a: GivenFinding, b: GivenFinding): number =>
  (b.money ?? -1) - (a.money ?? -1) || (b.litres ?? -1) - (a.litres ?? -1) || a.id.localeCompare(b.id);

const DAY_MS = 86_400_000;

/** The last day of a period, YYYY-MM-DD. */
const lastDayOf = ({ until }: ReportPeriod): string => new Date(Date.parse(`${nextMonth(until)}-01`) - DAY_MS).toISOString().slice(0, 10);

/** How a finding stood when the period ended, where it stands otherwise now; else how it stands. */
function stateInWords({ words, formats }: Writer, finding: GivenFinding, lastDay: string): string {
  const then = finding.stateThen && words.of('state', `${finding.stateThen} then`);
  if (then) return fill(then, { day: formats.dayOfYear(lastDay) });
  return words.of('state', isOverByItself(finding) ? 'over' : finding.state) ?? '';
}

function foundLines(writer: Writer, findings: readonly GivenFinding[], lastDay: string): ReportLine[] {
  const { words } = writer;
  const shown = [...findings].sort(byWorth).slice(0, MOST_FOUND);
  const named = shown.map((finding) => inZones(writer, words.of('found', finding.kind) ?? finding.kind, finding));
  return shown.map((finding, at) => {
    const name = named[at] ?? finding.kind;
    // Two of one kind would read as one said twice: each says when it was seen.
    const isTwin = named.filter((other) => other === name).length > 1;
    const what = isTwin && finding.fromOn ? words.say('found.since', { what: name, day: writer.formats.dayOfYear(finding.fromOn) }) : name;
    const amounts = amountsOf(writer, finding, `found.${finding.id}`, {
      litres: words.say(finding.isTooLittle ? 'figure.tooLittle' : 'figure.tooMuch', { what }),
      money: words.say('figure.tooMuchMoney', { what }),
    });
    const seen = seenInWords(writer, finding, lastDay);
    const amount = words.say(foundWord(finding, amounts), {
      seen,
      litres: amounts.litres ?? '',
      money: amounts.money ?? '',
      each: amounts.each,
    });
    const state = stateInWords(writer, finding, lastDay);
    return { id: finding.id, says: words.say('found.line', { what, amount, state }).trim(), figures: amounts.figures, photos: [] };
  });
}

/** A rate is that of the day on which it was seen last: after the period it is not the period's own, and says its day. */
const seenInWords = ({ words, formats }: Writer, { untilOn }: GivenFinding, lastDay: string): string =>
  untilOn !== null && untilOn > lastDay ? words.say('found.seenOn', { day: formats.dayOfYear(untilOn) }) : words.say('found.seenLast');

function foundWord({ isTooLittle }: GivenFinding, { litres, money }: Amounts): ReportWord {
  if (litres === null) return 'found.noAmount';
  if (isTooLittle) return 'found.amountLess';
  return money === null ? 'found.amount' : 'found.amountMoney';
}

/** What ended without anybody's work. */
const isOverByItself = ({ state, resolvedWith }: GivenFinding): boolean => state === 'resolved' && resolvedWith === null;

interface Amounts {
  readonly litres: string | null;
  readonly money: string | null;
  /** a month, or a year */
  readonly each: string;
  readonly figures: readonly Figure[];
}

function amountsOf(
  writer: Writer,
  finding: GivenFinding,
  id: string,
  labels: { readonly litres: string; readonly money: string },
): Amounts {
  // What plants of different needs cost runs through the seasons: a month of it says little.
  const isOfYear = finding.kind === 'mixed water needs';
  const [times, each] = [isOfYear ? MONTHS_OF_YEAR : 1, writer.words.say(isOfYear ? 'each.year' : 'each.month')];
  if (finding.litres === null || WITHOUT_AMOUNT.has(finding.kind)) return { litres: null, money: null, each, figures: [] };
  const size = Math.abs(finding.litres) * times;
  const { figure, said, asWritten } = writer.roughly(size);
  const of = (part: 'litres' | 'money'): FigureOf => ({ id: `${id}.${part}`, label: `${labels[part]}, ${each}` });
  const volume = figure(of('litres'), size);
  const litres = said(size);
  // Water that lacks has no price.
  if (finding.isTooLittle || finding.money === null || Math.abs(finding.money) * times < LEAST_MONEY)
    return { litres, money: null, each, figures: [volume] };
  const inStep = size === 0 ? 1 : asWritten(size) / size;
  const money = writer.money(of('money'), Math.abs(finding.money) * times * inStep);
  return { litres, money: money.shown, each, figures: [volume, money] };
}

function doneLines(writer: Writer, work: readonly GivenWork[], { from, until }: ReportPeriod): ReportLine[] {
  const { words, formats } = writer;
  return work
    .filter(({ doneOn }) => doneOn !== null && doneOn.slice(0, 7) >= from && doneOn.slice(0, 7) <= until)
    .sort((a, b) => (a.doneOn ?? '').localeCompare(b.doneOn ?? '') || a.id.localeCompare(b.id))
    .map((order) => {
      const told = wordsOfDone(writer, order);
      const says = words.say('done.line', {
        day: formats.dayOfYear(order.doneOn),
        kind: words.of('kind', order.kind) ?? order.kind,
        what: told ? words.say('done.what', { what: told }) : '',
      });
      return { id: order.id, says, figures: [], photos: order.photos };
    });
}

/** What is open when the report is made; what began after its period says so. */
interface Open {
  readonly findings: readonly GivenFinding[];
  /** the day after the period */
  readonly after: string;
}

function recommendedLines(writer: Writer, work: readonly GivenWork[], { findings, after }: Open): ReportLine[] {
  const orders = work.filter(
    ({ kind, state }) => state === 'waiting for approval' || (kind === 'upgrade' && (state === 'open' || state === 'given out')),
  );
  // What is in work is on its way: it is named after what waits for somebody.
  const open = [
    ...findings.filter(({ state }) => state === 'open').sort(byWorth),
    ...findings.filter(({ state }) => state === 'in work').sort(byWorth),
  ];
  return [
    ...orders.map((order) => orderLine(writer, order)),
    ...open.slice(0, MOST_RECOMMENDED).map((finding) => adviceLine(writer, finding, after)),
  ];
}

function orderLine(writer: Writer, order: GivenWork): ReportLine {
  const { id, kind, cost, state } = order;
  const { words } = writer;
  const figures = cost === null ? [] : [writer.money({ id: `recommended.${id}.cost`, label: words.say('figure.cost') }, cost)];
  const says = words.say('recommended.order', {
    what: wordsOfOrder(writer, order, 'action') || (words.of('kind', kind) ?? kind),
    cost: figures[0] ? words.say('recommended.cost', { cost: figures[0].shown }) : '',
    state: words.say(state === 'waiting for approval' ? 'recommended.waiting' : 'recommended.planned'),
  });
  return { id, says, figures, photos: [] };
}

function adviceLine(writer: Writer, finding: GivenFinding, after: string): ReportLine {
  const { words } = writer;
  const labels = { litres: words.say('figure.wouldSave'), money: words.say('figure.savedMoney') };
  const what = words.of('action', finding.kind) ?? words.of('found', finding.kind) ?? finding.kind;
  const action = inZones(writer, what, finding);
  const isNew = finding.fromOn !== null && finding.fromOn >= after;
  const since = isNew ? words.say('recommended.sinceThen', { day: writer.formats.dayInWords(finding.fromOn) }) : '';
  const state = since + (finding.state === 'in work' ? words.say('recommended.inWork') : '');
  const amounts = amountsOf(writer, finding, `recommended.${finding.id}`, labels);
  if (amounts.litres === null || finding.isTooLittle)
    return { id: finding.id, says: words.say('recommended.findingOnly', { action, state }), figures: [], photos: [] };
  const money = amounts.money ? words.say('saved.money', { money: amounts.money }) : '';
  return {
    id: finding.id,
    says: words.say('recommended.finding', { action, litres: amounts.litres, money, each: amounts.each, state }),
    figures: amounts.figures,
    photos: [],
  };
}
