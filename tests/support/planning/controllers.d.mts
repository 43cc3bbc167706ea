import type { PlanInput } from '@rillbook/irrigation/planning/plan-input.js';

/** A repeatable source of numbers from 0 to 1. */
export function numbersFrom(seed: number): () => number;

/** How large an invented controller may be, and whether its timer may hold less than its records say and have percents of the months. */
export interface Invented {
  readonly mostZones?: number;
  readonly mostPrograms?: number;
  readonly oddLimits?: boolean;
}

/** One controller and month, invented. */
export function inventedController(seed: number, most?: Invented): PlanInput;
