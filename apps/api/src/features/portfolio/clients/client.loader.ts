import { defineLoader } from '../../../platform/graphql/loader.js';
import type { ClientRow } from './client.entity.js';
import { clients } from './client.repository.js';

/** The client of an id. */
export const clientOfId = defineLoader<string, ClientRow | null>(
  async (tx, ids) => new Map((await clients.ofIds(tx, ids)).map((row) => [row.id, row])),
  null,
);
