import { mergeKept, type Wish } from '../kept/merge-kept.js';
import { saysOf } from '../kept/says-of.js';
import type { FileMerge, ImportTarget } from '../directory/file-merge.js';
import { propertiesThatWait } from './waiting-properties.repository.js';

/** stations.csv */
export const mergeStations: FileMerge<'stations'> = async (to, { columns, rows }) => {
  const wishes = rows.map(({ values, typed }): Wish => {
    const { station, ...position } = values;
    return { id: to.directory.stations.of(station), typed, values: { name: station, ...position } };
  });
  const merged = await mergeKept(to.tx, 'weather_station', wishes, saysOf('stations', columns, { name: 'station' }));
  for (const id of merged.ids) to.touched.stations.add(id);
  if (merged.created) await linkWaiting(to, wishes);
  return merged;
};

/** Properties that were imported before their station was known. */
async function linkWaiting(to: ImportTarget, stations: readonly Wish[]): Promise<void> {
  const ids = new Map(stations.map(({ id, values }) => [String(values['name']), id]));
  const waiting = await propertiesThatWait(to.tx, [...ids.keys()]);
  const wishes = waiting.map(({ id, station, typed }) => ({ id, typed, values: { weatherStationId: ids.get(station)! } }));
  if (wishes.length) await mergeKept(to.tx, 'property', wishes, { columns: new Set<string>(), properties: new Set(['weatherStationId']) });
}
