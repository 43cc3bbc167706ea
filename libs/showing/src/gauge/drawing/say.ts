import { GAPS, type GapKind, type GaugeNumbers, type GaugeSize, type GaugeWords, isKnown, MARKS, type Mark } from './model.js';
import { roundTo, type WrittenNumbers } from './scale.js';
import type { Line, Span } from './text.js';

/** The words of one drawing: numbers as they are written, in one language. */
export interface Sayings {
  readonly words: GaugeWords;
  readonly numbers: GaugeNumbers;
  readonly written: WrittenNumbers;
}

/** Under this an amount of money is written as 0, and left out. */
const LEAST_MONEY = 0.5;

const withUnit = ({ words, written }: Sayings, value: number): string => `${words.number(value, written.decimals)} ${words.unit}`;

const plusMinus = (sayings: Sayings, sd: number | null | undefined): string | null => {
  const rounded = isKnown(sd) && sd > 0 ? roundTo(Math.max(sd, sayings.written.step), sayings.written.step) : null;
  return rounded === null ? null : `±\u00a0${sayings.words.number(rounded, sayings.written.decimals)}`;
};

/** Name, volume, unit and uncertainty of a known mark, as parts that a size puts on one line or on several. */
export function volumeParts(sayings: Sayings, mark: Mark): { name: string; volume: Span[]; spread: string | null } {
  const value = sayings.written.volumes[mark] ?? 0;
  const volume = [{ text: sayings.words.number(value, sayings.written.decimals), bold: true }, { text: ` ${sayings.words.unit}` }];
  return { name: sayings.words.marks[mark], volume, spread: plusMinus(sayings, sayings.numbers.volumes[mark].sd) };
}

/** What a gap says: the comparison, its gallons and money, and what follows from it. */
export interface GapSaying {
  readonly known: boolean;
  readonly comparison: string;
  readonly amount: readonly Span[];
  readonly note: string;
}

export function gapSaying(sayings: Sayings, kind: GapKind): GapSaying {
  const { words, numbers, written } = sayings;
  const gap = numbers.gaps[kind];
  const value = written.gaps[kind];
  const name = words.gaps[kind];
  if (value === null) return { known: false, comparison: unknownGap(sayings, kind), amount: [], note: '' };
  const side = value >= 0 ? 'above' : 'below';
  const spread = plusMinus(sayings, gap.sd);
  return {
    known: true,
    comparison: words.compare[kind][side],
    amount: amountSpans(sayings, value, inStep(gap, value)),
    note: `${name}: ${gap.within ? words.within(spread) : words.remedy[kind][side]}`,
  };
}

/** The money of a gap as it is written: rounding never parts it from the volume beside it, nor does its sign. */
function inStep(gap: { readonly value: number | null; readonly money?: number | null } | undefined, shown: number): number | null {
  if (!gap || !isKnown(gap.money) || !isKnown(gap.value)) return gap?.money ?? null;
  if (gap.value === 0) return gap.money === 0 ? 0 : null;
  return gap.money / gap.value < 0 ? null : (gap.money * shown) / gap.value;
}

function amountSpans(sayings: Sayings, value: number, money: number | null | undefined): Span[] {
  const amount: Span[] = [{ text: withUnit(sayings, Math.abs(value)), bold: true }];
  // What rounds to nothing is no amount of money.
  return isKnown(money) && Math.abs(money) >= LEAST_MONEY
    ? [...amount, { text: `, ${sayings.words.about(sayings.words.money(Math.abs(money)))}` }]
    : amount;
}

function unknownGap({ words, numbers }: Sayings, kind: GapKind): string {
  const name = words.gaps[kind];
  const reason = numbers.gaps[kind].missing;
  const step = GAPS.find((gap) => gap.kind === kind);
  const lacks = step && [step.from, step.to].find((mark) => !isKnown(numbers.volumes[mark].value));
  if (lacks) return words.waitsFor(name, words.marks[lacks]);
  return reason ? `${name}: ${reason}` : words.notKnown(name);
}

/** What the three gaps add up to; where one of them is not known, the plain question instead: metered against need. */
export function totalSpans(sayings: Sayings): Span[] | null {
  const { written, words, numbers } = sayings;
  const what = GAPS.every(({ kind }) => written.gaps[kind] !== null) ? 'aboveAllowed' : 'aboveNeed';
  const value = written[what];
  if (value === null) return null;
  const side = value >= 0 ? 'above' : 'below';
  return [{ text: `${words.compare[what][side]}: ` }, ...amountSpans(sayings, value, inStep(numbers[what], value))];
}

/** The drawing in words: all four volumes always, the gaps where the drawing names them. */
export function accessibleName(sayings: Sayings, size: GaugeSize): string {
  const volumes = MARKS.map((mark) => sayVolume(sayings, mark));
  if (size === 'row' || size === 'month') return volumes.join('; ');
  const gaps = GAPS.map(({ kind }) => gapSaying(sayings, kind)).map(({ known, comparison, amount, note }) =>
    known ? `${comparison}: ${amount.map((span) => span.text).join('')}; ${note}` : comparison,
  );
  const total = totalSpans(sayings);
  return [volumes.join('; '), ...gaps, ...(total ? [total.map((span) => span.text).join('')] : [])].join('. ');
}

function sayVolume(sayings: Sayings, mark: Mark): string {
  const { words, numbers, written } = sayings;
  const volume = numbers.volumes[mark];
  const value = written.volumes[mark];
  if (value === null) return `${words.marks[mark]}: ${words.missing}${volume.missing ? `, ${volume.missing}` : ''}`;
  return `${words.marks[mark]} ${withUnit(sayings, value)}${volume.estimated ? `, ${words.estimated}` : ''}`;
}

export const plain = (text: string, size: number, soft = false): Line => ({ size, spans: [soft ? { text, soft } : { text }] });
