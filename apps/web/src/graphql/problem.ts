import { CombinedGraphQLErrors, ServerError, ServerParseError } from '@apollo/client/errors';
import { TimeoutError } from 'rxjs';

/** What went wrong between here and the server: no answer, or an answer that refuses with a code, its details and a sentence in English. */
export type Problem =
  | { readonly kind: 'noAnswer' }
  | { readonly kind: 'refused'; readonly code: string; readonly says: string; readonly details?: unknown };

/** What an answer of HTTP refuses, as the server tells it. */
export class HttpRefusal extends Error {
  override readonly name = 'HttpRefusal';

  constructor(
    readonly code: string,
    message: string,
    readonly details: unknown,
  ) {
    super(message);
  }
}

const codeOf = (extensions: Readonly<Record<string, unknown>> | undefined): string => {
  const code = extensions?.['code'];
  return typeof code === 'string' ? code : 'UNKNOWN';
};

/** No line, nobody in time, or something between here and the server that answered in its place. */
const isNoAnswer = (error: unknown): boolean => ServerParseError.is(error) || error instanceof TypeError || error instanceof TimeoutError;

const refusedBy = (code: string, says: string, details?: unknown): Problem => ({ kind: 'refused', code, says, details });

function refusedByGraphql({ errors, message }: CombinedGraphQLErrors): Problem {
  const [first] = errors;
  return refusedBy(codeOf(first?.extensions), first?.message ?? message, first?.extensions?.['details']);
}

/** Reads any error of the link as a problem that can be told to a person. */
export function problemOf(error: unknown): Problem {
  if (CombinedGraphQLErrors.is(error)) return refusedByGraphql(error);
  if (error instanceof HttpRefusal) return refusedBy(error.code, error.message, error.details);
  if (ServerError.is(error)) return error.statusCode === 401 ? refusedBy('SIGN_IN_NEEDED', error.message) : { kind: 'noAnswer' };
  if (isNoAnswer(error)) return { kind: 'noAnswer' };
  return refusedBy('UNKNOWN', error instanceof Error ? error.message : String(error));
}
