import type { IntlShape } from 'react-intl';
import { messageOf } from '../../../says/saying.js';

/** How work ended, as the server tells it: a code with its details. */
export interface Outcome {
  readonly code: string;
  readonly details: unknown;
}

/** A draft that could not be approved. */
export interface RefusedDraft {
  readonly client: string;
  readonly code: string;
}

/** Counts that older work did not tell. */
const NONE = { written: 0, failed: 0 };

/** How work ended, in the person's language; null where this version does not know the code, and the server's own sentence stands. */
export function endedSentence(intl: IntlShape, outcome: Outcome | null | undefined): string | null {
  if (!outcome) return null;
  const values = Object.entries(outcome.details ?? {}).filter(([, value]) => typeof value === 'string' || typeof value === 'number');
  return messageOf({ intl }, `reports.job.outcome.${outcome.code}`, { ...NONE, ...Object.fromEntries(values) });
}

/** The drafts that could not be approved. */
export const refusedIn = (outcome: Outcome | null | undefined): readonly RefusedDraft[] =>
  (outcome?.details as { refused?: readonly RefusedDraft[] } | null | undefined)?.refused ?? [];

/** Why a draft could not be approved. */
export const refusalSentence = (intl: IntlShape, code: string): string =>
  messageOf({ intl }, `reports.job.refused.${code}`) ?? intl.formatMessage({ id: 'reports.job.refused.other' });
