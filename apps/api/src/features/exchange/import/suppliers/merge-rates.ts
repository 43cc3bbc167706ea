import { keyedWishes } from '../kept/keyed-wishes.js';
import { mergeKept } from '../kept/merge-kept.js';
import { saysOf } from '../kept/says-of.js';
import type { FileMerge } from '../directory/file-merge.js';
import { supplierIds } from './supplier-ids.js';

/** rates.csv: a water supplier is made by being named. */
export const mergeRates: FileMerge<'rates'> = async (to, { columns, rows }) => {
  const suppliers = await supplierIds(
    to,
    rows.map(({ values }) => values.waterSupplier),
  );
  const wished = rows.map(({ values, typed }) => {
    const { waterSupplier, effectiveFrom, tier, ...others } = values;
    return { key: { supplierId: suppliers.get(waterSupplier)!, effectiveFrom, tier }, values: others, typed };
  });
  const wishes = await keyedWishes(to.tx, 'rate_tier', wished);
  const merged = await mergeKept(to.tx, 'rate_tier', wishes, saysOf('rates', columns, { supplierId: 'water_supplier' }));
  const changed = new Set(merged.ids);
  for (const { id, values } of wishes) if (changed.has(id)) to.touched.suppliers.add(String(values['supplierId']));
  return merged;
};
