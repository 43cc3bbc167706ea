import { mergeKept, type Wish } from '../kept/merge-kept.js';
import { saysOf } from '../kept/says-of.js';
import type { FileMerge } from '../directory/file-merge.js';

/** meters.csv */
export const mergeMeters: FileMerge<'meters'> = async ({ tx, directory, touched }, { columns, rows }) => {
  const wishes = rows.map(({ values, typed }): Wish => {
    const { meter, property, kind, water, ...others } = values;
    const propertyId = directory.properties.known(property);
    return {
      id: directory.meters.of(meter, propertyId),
      typed,
      values: { ...others, name: meter, propertyId, kind: kind ?? 'irrigation', water: water ?? 'potable' },
    };
  });
  const merged = await mergeKept(tx, 'meter', wishes, saysOf('meters', columns, { name: 'meter', propertyId: 'property' }));
  for (const id of merged.ids) touched.properties.add(directory.meters.ownerOf(id));
  return merged;
};
