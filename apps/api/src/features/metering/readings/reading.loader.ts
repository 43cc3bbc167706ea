import { defineLoader } from '../../../platform/graphql/loader.js';
import type { ReadingRow } from './reading.entity.js';
import { readings } from './reading.repository.js';

/** The newest readings of a meter, and how many are wanted. */
interface NewestOf {
  readonly meterId: string;
  readonly most: number;
}

/** As a key: `${most} ${meterId}`. */
export const newestKey = ({ meterId, most }: NewestOf): string => `${most} ${meterId}`;

/** A meter's newest readings, newest first, replaced ones too. */
export const newestReadings = defineLoader<string, ReadingRow[]>(async (tx, keys) => {
  const asked = keys.map((key) => ({ key, most: Number(key.split(' ')[0]), meterId: key.split(' ')[1]! }));
  const most = Math.max(...asked.map((one) => one.most));
  const found = await readings.newest(tx, [...new Set(asked.map((one) => one.meterId))], most);
  return new Map(asked.map((one) => [one.key, (found.get(one.meterId) ?? []).slice(0, one.most)]));
}, []);
