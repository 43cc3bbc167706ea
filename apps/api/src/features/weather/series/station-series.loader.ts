import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { defineLoader } from '../../../platform/graphql/loader.js';
import { stationRecords } from './station-record.repository.js';
import { judgedStation, type JudgedStation, neighbourOf, stationSeries, type StationSeries, wantsNeighbour } from './station-series.js';

/** The days of a station as they are reckoned with: judged, with reference evapotranspiration, filled where needed; null for no station. */
export const stationSeriesOf = defineLoader<string, StationSeries | null>(async (tx, ids) => {
  const all = await stationRecords.stations(tx);
  const own = (await judged(tx, ids, all)).map((station) => ({ station, neighbour: neighbourOf(station.station, all) }));
  const wanted = own.flatMap(({ station, neighbour }) => (wantsNeighbour(station, neighbour) ? [neighbour!.station.id] : []));
  const present = new Map(own.map(({ station }) => [station.station.id, station]));
  const more = [...new Set(wanted)].filter((id) => !present.has(id));
  for (const station of await judged(tx, more, all)) present.set(station.station.id, station);
  return new Map(
    own.map(({ station, neighbour }) => {
      const record = neighbour && wantsNeighbour(station, neighbour) ? (present.get(neighbour.station.id) ?? null) : null;
      return [station.station.id, stationSeries(station, neighbour, record)];
    }),
  );
}, null);

async function judged(
  tx: OrganizationTransaction,
  ids: readonly string[],
  all: readonly JudgedStation['station'][],
): Promise<JudgedStation[]> {
  if (ids.length === 0) return [];
  const rows = await stationRecords.days(tx, ids);
  return all.filter(({ id }) => ids.includes(id)).map((station) => judgedStation(station, rows.get(station.id) ?? []));
}
