import { defineLoader } from '../../../../platform/graphql/loader.js';
import { cautionsOf } from './caution.js';
import { cautionFacts } from './caution.repository.js';

/** The codes of the cautions at a stop. */
export const cautionsOfStop = defineLoader<string, string[]>(
  async (tx, ids) => new Map((await cautionFacts.ofStops(tx, ids)).map((facts) => [facts.stopId, cautionsOf(facts)])),
  [],
);
