import { mergeKept } from '../kept/merge-kept.js';
import type { ImportTarget } from '../directory/file-merge.js';

const NOTHING_SAID = { columns: new Set<string>(), properties: new Set<string>() };

/** Finds the water suppliers that rows name; new ones are made by being named. */
export async function supplierIds(to: ImportTarget, names: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const ids = new Map(names.map((name) => [name, to.directory.suppliers.of(name)]));
  const wishes = [...ids].map(([name, id]) => ({ id, values: { name }, typed: {} }));
  await mergeKept(to.tx, 'water_supplier', wishes, NOTHING_SAID);
  return ids;
}
