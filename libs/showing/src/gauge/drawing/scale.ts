import { GAPS, type GapKind, type GaugeNumbers, isKnown, MARKS, type Mark } from './model.js';

/** The top of the scale: given, or a little above the highest volume with its uncertainty. */
export function scaleTop(numbers: GaugeNumbers): number {
  if (isKnown(numbers.scaleTop) && numbers.scaleTop > 0) return numbers.scaleTop;
  const heights = MARKS.map((mark) => numbers.volumes[mark]).map(({ value, sd }) => (isKnown(value) ? value + (isKnown(sd) ? sd : 0) : 0));
  const highest = Math.max(...heights);
  return highest > 0 ? highest * 1.06 : 1;
}

/** The step between numerals: 1, 2, 2.5, 5 times a power of ten, so that there are at most eight. */
export function numeralStep(top: number): number {
  const power = 10 ** Math.floor(Math.log10(top / 5));
  return [1, 2, 2.5, 5, 10].map((times) => times * power).find((step) => top / step <= 8.5) ?? top / 5;
}

/** A numeral of the board, in thousands where its steps are thousands. */
export function numeral(value: number, step: number, write: (value: number, decimals: number) => string): string {
  const times = step >= 1000 ? 1000 : 1;
  const decimals = [0, 1].find((count) => Number.isInteger(Math.round((step / times) * 10 ** count * 1e6) / 1e6)) ?? 2;
  return write(value / times, decimals);
}

/** Numbers as they are written: four figures of the largest volume, and gaps that add up to what is written beside the marks. */
export interface WrittenNumbers {
  readonly decimals: number;
  readonly step: number;
  readonly volumes: Readonly<Record<Mark, number | null>>;
  readonly gaps: Readonly<Record<GapKind, number | null>>;
  readonly aboveAllowed: number | null;
  readonly aboveNeed: number | null;
}

export function written(numbers: GaugeNumbers): WrittenNumbers {
  const step = roundingStep(
    Math.max(0, ...MARKS.map((mark) => numbers.volumes[mark].value).map((value) => (isKnown(value) ? Math.abs(value) : 0))),
    numbers.leastStep,
  );
  const volumes = Object.fromEntries(MARKS.map((mark) => [mark, roundTo(numbers.volumes[mark].value, step)])) as Record<
    Mark,
    number | null
  >;
  const between = (value: number | null, from: Mark, to: Mark): number | null => roundedBetween(value, volumes[from], volumes[to], step);
  const gaps = Object.fromEntries(GAPS.map(({ kind, from, to }) => [kind, between(numbers.gaps[kind].value, from, to)]));
  const aboveAllowed = between(numbers.aboveAllowed.value, 'allowed', 'metered');
  const aboveNeed = between(numbers.aboveNeed?.value ?? null, 'needed', 'metered');
  return {
    step,
    decimals: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)),
    volumes,
    gaps: gaps as Record<GapKind, number | null>,
    aboveAllowed,
    aboveNeed,
  };
}

/** A gap as it is written beside the two volumes that it lies between, which are rounded: what a reader gets who takes one from the other. */
export function roundedBetween(value: number | null, low: number | null, high: number | null, step: number): number | null {
  const rounded = roundTo(value, step);
  if (rounded === null || low === null || high === null) return rounded;
  // Rounding alone moves a difference by one step at most; more is a gap that the account counted otherwise, and it is kept.
  return Math.abs(high - low - (value ?? 0)) <= 1.5 * step ? high - low : rounded;
}

/** Four figures of the largest number: 100 for 389,600, 1 for 1,475, 0.1 for 213.4; never finer than the least step. */
export const roundingStep = (largest: number, least = 0.01): number =>
  largest > 0 ? Math.max(least, 10 ** (Math.floor(Math.log10(largest)) - 3)) : Math.max(least, 1);

export const roundTo = (value: number | null | undefined, step: number): number | null =>
  isKnown(value) ? Math.round(value / step) * step + 0 : null;
