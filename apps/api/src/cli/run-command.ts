import { StartProblem } from '../platform/database/start-problem.js';
import { asProblem } from '../platform/problems/answer.js';
import { type Command, type ExitCode, UsageProblem } from './command.js';

type Say = (line: string) => void;

const overview = (commands: readonly Command[]): string =>
  [
    'Rillbook on the command line:',
    ...commands.map((command) => `  npm run ${command.name} -- ${command.usage}\n      ${command.summary}`),
  ].join('\n');

/** Whether parseArgs of node:util refused the words. */
const isParseRefusal = (thrown: unknown): thrown is Error =>
  thrown instanceof TypeError && String((thrown as NodeJS.ErrnoException).code).startsWith('ERR_PARSE_ARGS');

function explain(thrown: unknown, command: Command, say: Say): ExitCode {
  if (thrown instanceof UsageProblem || isParseRefusal(thrown)) {
    say(`${thrown.message}\nUse it like this: npm run ${command.name} -- ${command.usage}`);
    return 2;
  }
  say(thrown instanceof StartProblem ? thrown.message : asProblem(thrown).message);
  return 1;
}

/** Finds the command that was named and runs it; every failure ends in a sentence. */
export async function runCommand(commands: readonly Command[], [name, ...words]: readonly string[], say: Say): Promise<ExitCode> {
  const command = commands.find((one) => one.name === name);
  if (!command) {
    say(name ? `There is no command "${name}".\n${overview(commands)}` : overview(commands));
    return 2;
  }
  try {
    return await command.run(words);
  } catch (thrown) {
    return explain(thrown, command, say);
  }
}
