/** Details of a fault, by name; shown to the client beside the code. */
export type Details = Readonly<Record<string, unknown>>;

/** A fault with a code for programs and a sentence for people. */
export class Problem extends Error {
  override readonly name = 'Problem';

  constructor(
    readonly code: string,
    readonly status: number,
    message: string,
    readonly details: Details,
  ) {
    super(message);
  }
}

/** One entry of a catalogue: makes the problem from its details. */
export interface ProblemMaker<D extends Details> {
  (details: D): Problem;
  readonly code: string;
  readonly status: number;
}

/**
 * Declares a problem.
 *
 * @param code words in capitals, unique over all catalogues, never reused
 * @param status the HTTP status it answers with
 * @param say the sentence: what, where, what to do
 */
export function problem<D extends Details>(code: string, status: number, say: (details: D) => string): ProblemMaker<D> {
  return Object.assign((details: D) => new Problem(code, status, say(details), details), { code, status });
}
