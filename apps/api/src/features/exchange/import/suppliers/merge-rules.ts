import { keyedWishes } from '../kept/keyed-wishes.js';
import { mergeKept } from '../kept/merge-kept.js';
import { saysOf } from '../kept/says-of.js';
import type { FileMerge } from '../directory/file-merge.js';
import { supplierIds } from './supplier-ids.js';

/** rules.csv: a water supplier is made by being named. */
export const mergeRules: FileMerge<'rules'> = async (to, { columns, rows }) => {
  const suppliers = await supplierIds(
    to,
    rows.map(({ values }) => values.waterSupplier),
  );
  const wished = rows.map(({ values, typed }) => {
    const { rule, waterSupplier, effectiveFrom, ...others } = values;
    return { key: { supplierId: suppliers.get(waterSupplier)!, name: rule, effectiveFrom }, values: others, typed };
  });
  const wishes = await keyedWishes(to.tx, 'watering_rule', wished);
  return mergeKept(to.tx, 'watering_rule', wishes, saysOf('rules', columns, { name: 'rule', supplierId: 'water_supplier' }));
};
