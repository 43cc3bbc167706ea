import { nameKey } from '../../columns/text-cells.js';
import { problemAt } from '../../problems/problem.js';
import type { AcceptedRow } from '../../rows/imported-row.js';
import { keyedWishes } from '../kept/keyed-wishes.js';
import { mergeKept } from '../kept/merge-kept.js';
import { saysOf } from '../kept/says-of.js';
import type { FileMerge, ImportTarget, Refused } from '../directory/file-merge.js';

type Row = AcceptedRow<'plantings'>;

/** plantings.csv */
export const mergePlantings: FileMerge<'plantings'> = async (to, { columns, rows, name }) => {
  const refused = rows.flatMap((row) => refusal(to, row, name) ?? []);
  const bad = new Set(refused.map(({ row }) => row));
  const zoneIdOf = ({ property, zone }: Row['values']): string => to.directory.zones.known(zone, to.directory.properties.known(property));
  const wished = rows
    .filter((row) => !bad.has(row))
    .map(({ values, typed }) => {
      const { species, coverPercent, waterNeed, plantedOn } = values;
      return { key: { zoneId: zoneIdOf(values), species }, values: { coverPercent, waterNeed, plantedOn }, typed };
    });
  const wishes = await keyedWishes(to.tx, 'planting', wished);
  const merged = await mergeKept(to.tx, 'planting', wishes, saysOf('plantings', columns, { zoneId: 'zone' }));
  const changed = new Set(merged.ids);
  for (const { id, values } of wishes) if (changed.has(id)) to.touched.properties.add(to.directory.zones.ownerOf(String(values['zoneId'])));
  return { ...merged, refused };
};

/** The zone's own line was good in the file, but the database refused it. */
function refusal({ directory }: ImportTarget, row: Row, file: string): Refused<'plantings'> | null {
  const { property, zone } = row.values;
  const propertyId = directory.properties.known(property);
  const otherLine = directory.refusedZones.get(`${propertyId} ${nameKey(zone)}`);
  if (otherLine === undefined || directory.zones.find(zone, propertyId) !== null) return null;
  return {
    row,
    problem: problemAt({ file, line: row.line }, 'NAME_REJECTED', { column: 'zone', found: zone, expected: 'zones.csv', otherLine }),
  };
}
