import type { Problem } from '../../../platform/problems/problem.js';

/** How the other word is found in the journal again, and what is known of it where it was not said on a phone. */
export interface SaidBefore {
  readonly kind: string;
  readonly personId: string | null;
  readonly at: Date | null;
  /** the key of its operation, where the record has kept it; null where no phone told it */
  readonly id?: string | null;
  /** when it was saved, where that is known exactly */
  readonly savedAt?: Date;
  /** what its body holds, in any of these forms */
  readonly holds?: readonly string[];
}

/** How an operation went: simply, beside another change, or against what somebody else said of the same. */
export interface DoneOperation {
  readonly verdict: 'applied' | 'parallel' | 'conflict';
  /** what stood there before, or stands there instead */
  readonly other?: Readonly<Record<string, unknown>>;
  readonly before?: SaidBefore;
  readonly problem?: Problem;
}

export const APPLIED: DoneOperation = { verdict: 'applied' };
