import { mergePauses as merge, type PauseToMerge } from '../../../settings/pauses/merge-pauses.service.js';
import type { FileMerge } from '../directory/file-merge.js';
import { isWhole, typedOver, valueOver } from './over-stored.js';
import { controllerIdOf, touchControllers } from './places.js';
import { storedFacts } from './stored-facts.repository.js';

/** pauses.csv */
export const mergePauses: FileMerge<'pauses'> = async (to, { columns, rows }) => {
  const told = rows.map(({ values, typed }): PauseToMerge => {
    const { pausedFrom, pausedUntil } = values;
    return {
      controllerId: controllerIdOf(to, values),
      pausedFrom: new Date(pausedFrom),
      pausedUntil: pausedUntil === null ? null : new Date(pausedUntil),
      typed,
    };
  });
  const merged = await merge(to.tx, isWhole('pauses', columns) ? told : await overStored(told));
  if (merged.created + merged.changed) touchControllers(to, told);
  return merged;

  async function overStored(pauses: readonly PauseToMerge[]): Promise<PauseToMerge[]> {
    const before = await storedFacts.pauseEnds(
      to.tx,
      pauses.map(({ controllerId, pausedFrom }) => ({ owner: controllerId, key: pausedFrom })),
    );
    return pauses.map((pause, at) => ({
      ...pause,
      pausedUntil: valueOver(before[at] ?? null, pause.pausedUntil, columns.has('paused_until')),
      typed: typedOver(before[at] ?? null, pause.typed, columns),
    }));
  }
};
