import { CombinedGraphQLErrors, ServerError, ServerParseError } from '@apollo/client/errors';
import { TimeoutError } from 'rxjs';

/** What went wrong between here and the server: no answer, or an answer that refuses with a code and a sentence. */
export type Problem = { readonly kind: 'noAnswer' } | { readonly kind: 'refused'; readonly code: string; readonly says: string };

const codeOf = (extensions: Readonly<Record<string, unknown>> | undefined): string => {
  const code = extensions?.['code'];
  return typeof code === 'string' ? code : 'UNKNOWN';
};

/** No line, nobody in time, or something between here and the server that answered in its place. */
const isNoAnswer = (error: unknown): boolean => ServerParseError.is(error) || error instanceof TypeError || error instanceof TimeoutError;

/** Reads any error of the link as a problem that can be told to a person. */
export function problemOf(error: unknown): Problem {
  if (CombinedGraphQLErrors.is(error)) {
    const first = error.errors[0];
    return { kind: 'refused', code: codeOf(first?.extensions), says: first?.message ?? error.message };
  }
  if (ServerError.is(error)) {
    return error.statusCode === 401 ? { kind: 'refused', code: 'SIGN_IN_NEEDED', says: error.message } : { kind: 'noAnswer' };
  }
  if (isNoAnswer(error)) return { kind: 'noAnswer' };
  return { kind: 'refused', code: 'UNKNOWN', says: error instanceof Error ? error.message : String(error) };
}
