import { defineLoader } from '../../../platform/graphql/loader.js';
import { devices } from './device.repository.js';

/** What a phone calls itself; null where it says nothing, or was taken off the list. */
export const deviceNameOfId = defineLoader<string, string | null>(
  async (tx, ids) => new Map((await devices.ofIds(tx, ids)).map(({ id, name }) => [id, name])),
  null,
);
