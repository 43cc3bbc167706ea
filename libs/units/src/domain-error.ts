/**
 * A refusal of a computing library: a code for programs, details for people, never a bare message.
 *
 * Codes are words in capitals, unique over all libraries; details hold the offending values by name.
 */
export class DomainError extends Error {
  override readonly name = 'DomainError';

  /**
   * Makes the refusal.
   *
   * @param code - What is wrong, as a code. [code]
   * @param details - The offending values by their parameter names. [any]
   */
  constructor(
    readonly code: string,
    readonly details: Readonly<Record<string, unknown>> = {},
  ) {
    super(`${code} ${JSON.stringify(details)}`);
  }
}
