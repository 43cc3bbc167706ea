import type { Problem } from '../../../platform/problems/problem.js';

/** How an operation went: simply, beside another change, or against what somebody else said of the same. */
export interface DoneOperation {
  readonly verdict: 'applied' | 'parallel' | 'conflict';
  /** what stood there before, or stands there instead */
  readonly other?: Readonly<Record<string, unknown>>;
  readonly problem?: Problem;
}

export const APPLIED: DoneOperation = { verdict: 'applied' };
