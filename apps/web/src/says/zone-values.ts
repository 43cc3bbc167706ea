import type { Saying } from './saying.js';

/** How many zones, and the name of one that is alone. */
export function zoneValues({ intl, names }: Saying, zoneIds: readonly string[]): { zones: number; zoneName: string } {
  return { zones: zoneIds.length, zoneName: names.of(zoneIds[0]) ?? intl.formatMessage({ id: 'says.zone.one' }) };
}
