import { defineLoader } from '../../../platform/graphql/loader.js';
import type { CrewRow } from './crew.entity.js';
import { crews } from './crew.repository.js';

/** The crew of an id. */
export const crewOfId = defineLoader<string, CrewRow | null>(
  async (tx, ids) => new Map((await crews.ofIds(tx, ids)).map((row) => [row.id, row])),
  null,
);
