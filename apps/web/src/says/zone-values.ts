import type { Saying } from './saying.js';

/** How many zones, and the name of one that is alone. */
export const zoneValues = (saying: Saying, zoneIds: readonly string[]): { zones: number; zoneName: string } => ({
  zones: zoneIds.length,
  zoneName: zoneName(saying, zoneIds[0]),
});

/** A zone as a person says it: by its station and its name. */
export function zoneName({ intl, names }: Saying, id: string | null | undefined): string {
  const [name, station] = [names.of(id), names.stationOf(id)];
  if (name === null) return intl.formatMessage({ id: 'says.zone.one' });
  return station === null ? name : intl.formatMessage({ id: 'says.zone.named' }, { station, name });
}
