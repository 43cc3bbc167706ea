import type { IntlShape } from 'react-intl';
import type { Formats } from '../../../i18n/formats.js';
import { type ComparedSettings, settingsChanges } from '../../../page/work/settings-changes.js';

interface Dated extends ComparedSettings {
  readonly record: string;
  readonly localTime: string;
}

/** Since when a controller stands as it stands: found as it was left is no change. Null where nothing was found or left. */
export function unchangedSince(intl: IntlShape, formats: Formats, settings: readonly Dated[]): string | null {
  const newestFirst = settings
    .filter(({ record }) => record !== 'planned')
    .sort((one, other) => other.localTime.localeCompare(one.localTime));
  const changedAt = newestFirst.findIndex((fact, at) => {
    const before = newestFirst[at + 1];
    return before === undefined || settingsChanges(intl, formats, before, fact).length > 0;
  });
  return newestFirst[changedAt]?.localTime ?? null;
}
