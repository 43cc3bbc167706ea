import { DomainError } from '@rillbook/units/domain-error.js';

/** A rectangle of cans: how many rows and columns of the grid it covers. */
export interface CanWindow {
  readonly rows: number;
  readonly columns: number;
}

/**
 * Scheduling coefficient: how much longer a zone runs so that its driest place gets the need.
 *
 * SC = mean / minimum
 *
 * @param mean - Mean catch or rate. [any]
 * @param minimum - Catch or rate of the driest place, in the same unit. [any]
 * @returns Multiplier of the base run time, at least 1. [–]
 * @throws {DomainError} `SCHEDULING_COEFFICIENT_OUT_OF_DOMAIN` when not 0 < minimum ≤ mean.
 * @source Public horticulture course on irrigation design.
 * @example schedulingCoefficient(12, 7) // 1.714: 9 mm/d at 12 mm/h takes 1.3 h
 */
export function schedulingCoefficient(mean: number, minimum: number): number {
  if (!(minimum > 0 && mean >= minimum && Number.isFinite(mean))) {
    throw new DomainError('SCHEDULING_COEFFICIENT_OUT_OF_DOMAIN', { mean, minimum });
  }
  return mean / minimum;
}

/**
 * Mean catch of the driest rectangle of cans that stand together: the minimum of the scheduling coefficient of an area.
 *
 * @param grid - Catch of each can, row by row, all rows alike in length. [any]
 * @param window - Size of the rectangle. [cans]
 * @returns The lowest mean of any such rectangle, in the same unit. [any]
 * @throws {DomainError} `CAN_WINDOW_OUT_OF_DOMAIN` when rows differ in length, the window is not of whole cans within the grid, or a catch is
 * below zero or not finite.
 * @source Common practice of sprinkler tests: the driest contiguous part of the area.
 */
export function driestWindow(grid: readonly (readonly number[])[], window: CanWindow): number {
  const { rows, columns } = window;
  const width = grid[0]?.length ?? 0;
  const whole = [rows, columns].every((count) => Number.isInteger(count) && count >= 1);
  const regular = grid.every((row) => row.length === width && row.every((each) => each >= 0 && Number.isFinite(each)));
  if (!(whole && regular && rows <= grid.length && columns <= width)) throw new DomainError('CAN_WINDOW_OUT_OF_DOMAIN', { rows, columns });
  const windows = grid
    .slice(0, grid.length - rows + 1)
    .flatMap((_, top) => Array.from({ length: width - columns + 1 }, (__, side) => windowMean(grid, window, top, side)));
  return Math.min(...windows);
}

function windowMean(grid: readonly (readonly number[])[], { rows, columns }: CanWindow, top: number, side: number): number {
  const cans = grid.slice(top, top + rows).flatMap((row) => row.slice(side, side + columns));
  return cans.reduce((sum, each) => sum + each, 0) / cans.length;
}
