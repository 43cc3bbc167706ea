import { mergeKept, type Wish } from '../kept/merge-kept.js';
import { saysOf } from '../kept/says-of.js';
import type { FileMerge } from '../directory/file-merge.js';

/** controllers.csv */
export const mergeControllers: FileMerge<'controllers'> = async ({ tx, directory, touched }, { columns, rows }) => {
  const wishes = rows.map(({ values, typed }): Wish => {
    const { controller, property, monthlyAdjustPercent, ...others } = values;
    const propertyId = directory.properties.known(property);
    return {
      id: directory.controllers.of(controller, propertyId),
      typed,
      values: { ...others, name: controller, propertyId, monthlyAdjustPercent: monthlyAdjustPercent && [...monthlyAdjustPercent] },
    };
  });
  const merged = await mergeKept(tx, 'controller', wishes, saysOf('controllers', columns, { name: 'controller', propertyId: 'property' }));
  for (const id of merged.ids) touched.properties.add(directory.controllers.ownerOf(id));
  return merged;
};
