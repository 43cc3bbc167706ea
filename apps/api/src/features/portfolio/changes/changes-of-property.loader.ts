import { defineLoader, grouped, type Loader } from '../../../platform/graphql/loader.js';
import { changes, type PropertyChange } from './change.repository.js';

const loaders = new Map<number, Loader<string, readonly PropertyChange[]>>();

/** The newest changes of a property and of what stands on it, so many at most. */
export function changesOfProperty(most: number): Loader<string, readonly PropertyChange[]> {
  const present = loaders.get(most);
  if (present) return present;
  const made = defineLoader<string, readonly PropertyChange[]>(
    async (tx, ids) => grouped(await changes.ofProperties(tx, ids, most), (row) => row.propertyId),
    [],
  );
  loaders.set(most, made);
  return made;
}
