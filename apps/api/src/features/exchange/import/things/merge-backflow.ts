import { keyedWishes } from '../kept/keyed-wishes.js';
import { mergeKept } from '../kept/merge-kept.js';
import { saysOf } from '../kept/says-of.js';
import type { FileMerge } from '../directory/file-merge.js';

/** backflow.csv */
export const mergeBackflow: FileMerge<'backflow'> = async ({ tx, directory }, { columns, rows }) => {
  const wished = rows.map(({ values, typed }) => {
    const { property, assembly, ...others } = values;
    return { key: { propertyId: directory.properties.known(property), name: assembly }, values: others, typed };
  });
  const wishes = await keyedWishes(tx, 'backflow_assembly', wished);
  return mergeKept(tx, 'backflow_assembly', wishes, saysOf('backflow', columns, { propertyId: 'property', name: 'assembly' }));
};
