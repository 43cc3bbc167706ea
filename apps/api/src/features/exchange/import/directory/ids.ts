import { randomUUID } from 'node:crypto';
import { nameKey } from '../../columns/text-cells.js';

/** Ids by name: within the organization, or within an owner. A new name gets a new id. */
export class Ids {
  private readonly byName = new Map<string, string>();
  private readonly owners = new Map<string, string>();

  add(id: string, name: string, owner = ''): void {
    this.byName.set(keyOf(name, owner), id);
    if (owner) this.owners.set(id, owner);
  }

  /** The id of a name, a new one where there is none yet. */
  of(name: string, owner = ''): string {
    const known = this.byName.get(keyOf(name, owner));
    if (known !== undefined) return known;
    const id = randomUUID();
    this.add(id, name, owner);
    return id;
  }

  /** The id of a name, or null where there is none. */
  find(name: string, owner = ''): string | null {
    return this.byName.get(keyOf(name, owner)) ?? null;
  }

  /** The id of a name that the reading of the file has vouched for. */
  known(name: string, owner = ''): string {
    const id = this.byName.get(keyOf(name, owner));
    if (id === undefined) throw new TypeError(`the import accepted a row that names "${name}", which is not there`);
    return id;
  }

  /** The property that a meter, controller or zone stands on. */
  ownerOf(id: string): string {
    return this.owners.get(id) ?? '';
  }
}

function keyOf(name: string, owner: string): string {
  return `${owner} ${nameKey(name)}`;
}
