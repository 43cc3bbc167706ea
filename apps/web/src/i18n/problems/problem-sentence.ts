import { type Details, spanishProblems } from './spanish-problems.js';

/** A problem as the server tells it: a code, its details, and its English sentence. */
export interface ToldProblem {
  readonly code: string;
  readonly message: string;
  readonly details?: unknown;
}

/** How background work ended: a code with its details where one is known, and the server's own sentence. */
export interface EndedWork {
  readonly says?: string | null | undefined;
  readonly outcome?: Pick<ToldProblem, 'code' | 'details'> | null | undefined;
}

const detailsOf = (details: unknown): Details => (typeof details === 'object' && details !== null ? (details as Details) : {});

/** What the server refused and why, in the reader's language: the server itself speaks English. */
export function problemSentence(locale: 'en-US' | 'es-US', { code, message, details }: ToldProblem): string {
  if (locale === 'en-US') return message;
  const says = Object.hasOwn(spanishProblems, code) ? spanishProblems[code] : undefined;
  return says
    ? says(detailsOf(details))
    : `Esta página y el servidor no se entienden (${code}). Cargue la página de nuevo y pruebe otra vez.`;
}

/** Why background work failed, in the reader's language. */
export const failureSentence = (locale: 'en-US' | 'es-US', { says, outcome }: EndedWork): string | null =>
  outcome ? problemSentence(locale, { ...outcome, message: says ?? outcome.code }) : (says ?? null);
