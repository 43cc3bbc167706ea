import type { ReadingSeries } from '@rillbook/metering/detection/readings/reading-series.js';

/** What a meter is drawn with: how often it is read, its digits, units of a day, its first register, and how much of its use is summer's. */
export interface ReadWorld {
  readonly readings: number;
  readonly digits: number;
  readonly perDay: number;
  readonly start: number | null;
  readonly summerShare: number;
}

export type Mistake = 'swapped' | 'mistyped' | 'tenfold' | 'tenth' | 'gallons' | 'cubicFeet' | 'hundreds';

export const mistakes: Readonly<Record<Mistake, unknown>>;
export function readMeter(seed: number, changes?: Partial<ReadWorld>): ReadingSeries & { readonly digits: number };
export function misread(series: ReadingSeries & { readonly digits: number }, at: number, mistake: Mistake, draw: () => number): ReadingSeries;
