/** Why the product cannot start, in a sentence that says what to do. Printed without a stack. */
export class StartProblem extends Error {
  override readonly name = 'StartProblem';
}
