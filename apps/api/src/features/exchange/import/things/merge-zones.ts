import { nameKey } from '../../columns/text-cells.js';
import { problemAt } from '../../problems/problem.js';
import type { AcceptedRow } from '../../rows/imported-row.js';
import type { KeptThing } from '../kept/kept-merge.repository.js';
import { mergeKept, type Wish } from '../kept/merge-kept.js';
import { saysOf } from '../kept/says-of.js';
import type { FileMerge, ImportTarget, Refused } from '../directory/file-merge.js';
import { type Station, zoneStations } from './zone-stations.repository.js';

type Row = AcceptedRow<'zones'>;

const OTHERWISE = {
  name: 'zone',
  propertyId: 'property',
  controllerId: 'controller',
  meterId: 'meter',
  unmetered: 'meter',
} as const;

/** zones.csv: a station that a stored zone has is not taken from it by a file that does not name that zone. */
export const mergeZones: FileMerge<'zones'> = async (to, { columns, rows, name }) => {
  const refused = columns.has('station') ? await stationsOfOthers(to, rows, name) : [];
  const bad = new Set(refused.map(({ row }) => row));
  for (const row of bad) noteRefused(to, row);
  const wishes = rows.filter((row) => !bad.has(row)).map((row) => wishOf(to, row));
  const says = saysOf('zones', columns, OTHERWISE);
  // Two zones may change places: both leave their stations before either takes the other's.
  const beforeUpdate = (renewed: readonly KeptThing[]): Promise<void> =>
    zoneStations.leave(
      to.tx,
      renewed.map(({ id }) => id),
    );
  const merged = await mergeKept(to.tx, 'zone', wishes, { ...says, beforeUpdate });
  for (const id of merged.ids) to.touched.properties.add(to.directory.zones.ownerOf(id));
  return { ...merged, refused };
};

function wishOf({ directory }: ImportTarget, { values, typed }: Row): Wish {
  const { property, zone, controller, meter, ...others } = values;
  const propertyId = directory.properties.known(property);
  return {
    id: directory.zones.of(zone, propertyId),
    typed,
    values: {
      ...others,
      name: zone,
      propertyId,
      controllerId: controller === null ? null : directory.controllers.known(controller, propertyId),
      meterId: meter === null || meter === 'none' ? null : directory.meters.known(meter, propertyId),
      unmetered: meter === 'none',
    },
  };
}

async function stationsOfOthers({ tx, directory }: ImportTarget, rows: readonly Row[], file: string): Promise<Refused<'zones'>[]> {
  const wanted = rows.flatMap((row): (Station & { row: Row })[] => {
    const { property, controller, station } = row.values;
    if (controller === null || station === null) return [];
    return [{ row, controllerId: directory.controllers.known(controller, directory.properties.known(property)), station }];
  });
  const own = rows.flatMap(({ values }) => directory.zones.find(values.zone, directory.properties.known(values.property)) ?? []);
  const taken = await zoneStations.taken(tx, wanted, own);
  return wanted.flatMap(({ row, controllerId, station }) => {
    const zone = taken.get(`${controllerId} ${station}`);
    if (zone === undefined) return [];
    const parts = { column: 'station', found: String(station), expected: zone };
    return [{ row, problem: problemAt({ file, line: row.line }, 'STATION_OF_ANOTHER_ZONE', parts) }];
  });
}

function noteRefused({ directory }: ImportTarget, { values, line }: Row): void {
  directory.refusedZones.set(`${directory.properties.known(values.property)} ${nameKey(values.zone)}`, line);
}
