import { defineLoader } from '../../../platform/graphql/loader.js';
import type { SettingsRow } from './settings.entity.js';
import { settingsFacts } from './settings.repository.js';

/** The settings of an id; whoever hands out the id answers for the scope. */
export const settingsOfId = defineLoader<string, SettingsRow | null>(
  async (tx, ids) => new Map((await settingsFacts.ofIds(tx, ids)).map((row) => [row.id, row])),
  null,
);
