/** A stop on the board, with where it stands. */
export interface BoardStop {
  readonly id: string;
  readonly version: number;
  readonly locked: boolean;
  readonly name: string;
  readonly crewId: string;
  readonly day: string;
  /** From 1. */
  readonly position: number;
}

/** Where a stop is carried to. */
export interface CarriedTo {
  readonly crewId: string;
  readonly day: string;
  readonly position: number;
  readonly locked: boolean;
}

/** What the keys need to know of the board: crews and days in their order, and how many stops each day has. */
export interface BoardShape {
  readonly crewIds: readonly string[];
  readonly days: readonly string[];
  readonly countOf: (crewId: string, day: string) => number;
}

export type Direction = 'ArrowUp' | 'ArrowDown' | 'ArrowLeft' | 'ArrowRight';

const LAST = 999;

/**
 * Where a key carries a stop: up and down through the order of its day and on into the day before or after, left and right to the crew beside.
 * Null at the edge of the board. A stop that a hand has moved is locked.
 */
export function carriedBy(key: Direction, stop: BoardStop, { crewIds, days, countOf }: BoardShape): CarriedTo | null {
  const at = crewIds.indexOf(stop.crewId);
  const on = days.indexOf(stop.day);
  const to = (crewId: string | undefined, day: string | undefined, position: number): CarriedTo | null =>
    crewId === undefined || day === undefined ? null : { crewId, day, position, locked: true };
  if (key === 'ArrowLeft') return to(crewIds[at - 1], stop.day, stop.position);
  if (key === 'ArrowRight') return to(crewIds[at + 1], stop.day, stop.position);
  if (key === 'ArrowUp') return stop.position > 1 ? to(stop.crewId, stop.day, stop.position - 1) : to(stop.crewId, days[on - 1], LAST);
  const isLast = stop.position >= countOf(stop.crewId, stop.day);
  return isLast ? to(stop.crewId, days[on + 1], 1) : to(stop.crewId, stop.day, stop.position + 1);
}
