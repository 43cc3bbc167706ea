import {
  type ChangeFromFound,
  changeFromFound,
  GROUND_FORM,
  type PlanGround,
} from '@rillbook/irrigation/at-the-controller/change-from-found.js';
import type { Program } from '@rillbook/irrigation/settings/settings-fact.js';

/** What is asked of the thread that plans. */
export interface EnterQuestion {
  readonly ground: PlanGround;
  readonly found: readonly Program[];
}

/** What it found, or what it failed with. */
export type EnterAnswer = ChangeFromFound | { readonly kind: 'failed'; readonly message: string };

/** The ground as it was carried here; null where this version of the pages does not understand its form. */
export const groundOf = (form: number, ground: unknown): PlanGround | null => (form === GROUND_FORM ? (ground as PlanGround) : null);

/** Plans; what breaks is an answer too. */
export function answerOf({ ground, found }: EnterQuestion): EnterAnswer {
  try {
    return changeFromFound(ground, found);
  } catch (problem) {
    return { kind: 'failed', message: problem instanceof Error ? problem.message : String(problem) };
  }
}
