import { mergeSettings as merge } from '../../../settings/facts/merge-settings.service.js';
import { settingsFacts } from '../../rows/settings-facts.js';
import type { FileMerge } from '../directory/file-merge.js';
import { controllerIdOf, touchControllers } from './places.js';
import { storedSettings } from './stored-settings.repository.js';

/** settings.csv: the lines of one controller and time are one fact, but they are counted as lines. */
export const mergeSettings: FileMerge<'settings'> = async (to, { rows }) => {
  const told = settingsFacts(rows).map((fact) => ({
    ...fact,
    controllerId: controllerIdOf(to, fact),
    effectiveAt: new Date(fact.effectiveAt),
  }));
  const before = await storedSettings(to.tx, told);
  const linesOf = (which: string): number => told.reduce((sum, { typed }, at) => sum + (before[at] === which ? typed.lines.length : 0), 0);
  const merged = await merge(to.tx, told);
  if (merged.created + merged.changed) touchControllers(to, told);
  return { created: linesOf('none'), changed: linesOf('others'), same: linesOf('same') };
};
