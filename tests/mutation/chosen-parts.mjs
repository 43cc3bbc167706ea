// Leaves out all but a share of a library's functions and types, the same for the same seed: what is noticed of a fair sample is what would be
// noticed of the whole, within the chance that the proof prints. Stryker loads this by its path.
import { createHash } from 'node:crypto';
import { declareValuePlugin, PluginKind } from '@stryker-mutator/api/plugin';

const share = Number(process.env.MUTATION_SHARE ?? 1);
const seed = process.env.MUTATION_SEED ?? '1';

/** Between 0 and 1, by what a statement says: a file that is moved or grows above it leaves the draw as it was. */
const drawOf = (text) => createHash('sha256').update(`${seed} ${text}`).digest().readUInt32BE(0) / 2 ** 32;

export const strykerPlugins = [
  declareValuePlugin(PluginKind.Ignore, 'chosen-parts', {
    shouldIgnore(place) {
      const isPart = place.parentPath?.isProgram() === true;
      return isPart && drawOf(String(place)) >= share ? `not among the ${share} that were drawn` : undefined;
    },
  }),
];
