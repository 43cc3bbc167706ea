import type { Reason } from '../../../says/reason.js';

/** What a finding's sentence is made of. */
export interface ToldFinding {
  readonly kind: string;
  readonly state: string;
  readonly fromOn?: string | null;
  readonly untilOn?: string | null;
  readonly clearedAt?: string | null;
  readonly litres?: number | null;
  readonly money?: number | null;
  readonly confidence?: number | null;
  readonly says: Reason;
}
