// What the proof adds to Stryker, which loads this by its path.
import { createHash } from 'node:crypto';
import path from 'node:path';
import { declareClassPlugin, declareValuePlugin, PluginKind } from '@stryker-mutator/api/plugin';

const share = Number(process.env.MUTATION_SHARE ?? 1);
const seed = process.env.MUTATION_SEED ?? '1';

/** Between 0 and 1, by what a statement says: a file that is moved or grows above it leaves the draw as it was. */
const drawOf = (text) => createHash('sha256').update(`${seed} ${text}`).digest().readUInt32BE(0) / 2 ** 32;

/** One line of a change: what became of it, where it is, and what was written there instead. */
const says = ({ status, fileName, location, mutatorName, replacement }) =>
  `  ${status} ${path.relative(process.cwd(), fileName)}:${location.start.line}:${location.start.column} ${mutatorName}: ${(replacement ?? '').slice(0, 90).replaceAll('\n', ' ')}`;

/** Tells each change that nobody noticed when it is known: a run that is cut short has shown them too. */
class SurvivorsAtOnce {
  onMutantTested(mutant) {
    if (mutant.status === 'Survived' || mutant.status === 'NoCoverage') console.log(says(mutant));
  }
}

export const strykerPlugins = [
  declareClassPlugin(PluginKind.Reporter, 'survivors-at-once', SurvivorsAtOnce),
  // Leaves out all but a share of a library's functions and types, the same for the same seed: what is noticed of a fair sample is what would
  // be noticed of the whole, within the chance that the proof prints.
  declareValuePlugin(PluginKind.Ignore, 'chosen-parts', {
    shouldIgnore(place) {
      const isPart = place.parentPath?.isProgram() === true;
      return isPart && drawOf(String(place)) >= share ? `not among the ${share} that were drawn` : undefined;
    },
  }),
];
