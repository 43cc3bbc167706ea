/** Volumes are told to three figures, large ones to four: what is finer was never measured. */
const FOUR_FIGURES_FROM = 100_000;

/** A number as exact as it deserves: 57,934 becomes 57,900 and 389,634 becomes 389,600. */
export function roundVolume(value: number): number {
  if (value === 0) return 0;
  const figures = Math.abs(value) >= FOUR_FIGURES_FROM ? 4 : 3;
  const step = 10 ** (Math.floor(Math.log10(Math.abs(value))) + 1 - figures);
  return step >= 1 ? Math.round(value / step) * step : Number(value.toPrecision(figures));
}
