import { defineLoader } from '../../../platform/graphql/loader.js';
import type { SettingsRow } from './settings.entity.js';
import { settingsFacts } from './settings.repository.js';

/** A controller's newest settings, and how many are wanted, as a key. */
export const newestSettingsKey = (controllerId: string, most: number): string => `${most} ${controllerId}`;

/** A controller's newest settings of every record, newest first. */
export const newestSettings = defineLoader<string, SettingsRow[]>(async (tx, keys) => {
  const asked = keys.map((key) => ({ key, most: Number(key.split(' ')[0]), controllerId: key.split(' ')[1]! }));
  const most = Math.max(...asked.map((one) => one.most));
  const found = await settingsFacts.newest(tx, [...new Set(asked.map((one) => one.controllerId))], most);
  return new Map(asked.map((one) => [one.key, (found.get(one.controllerId) ?? []).slice(0, one.most)]));
}, []);
