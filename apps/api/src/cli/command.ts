/** How a command ended: done; refused or failed, with a sentence; or called in a way it does not understand. */
export type ExitCode = 0 | 1 | 2;

/** One command of the command line. */
export interface Command {
  /** the word after `npm run` */
  readonly name: string;
  /** one line: what it is for */
  readonly summary: string;
  /** the words it takes, as a person types them */
  readonly usage: string;
  run(words: readonly string[]): Promise<ExitCode>;
}

/** The command was called in a way it does not understand; says what is missing or unknown. */
export class UsageProblem extends Error {
  override readonly name = 'UsageProblem';
}
