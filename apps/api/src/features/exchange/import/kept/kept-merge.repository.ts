import { Any } from 'typeorm';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import type { KeptRow } from '../../../../platform/records/kept-row.js';

/** The tables of kept things that files fill. */
export type KeptTable =
  | 'client'
  | 'weather_station'
  | 'water_supplier'
  | 'property'
  | 'meter'
  | 'controller'
  | 'zone'
  | 'planting'
  | 'watering_rule'
  | 'rate_tier'
  | 'backflow_assembly';

/** Columns of a kept thing by the names of its row class. */
export type Values = Readonly<Record<string, unknown>>;

/** A kept thing of any table. */
export type KeptThing = KeptRow & Values;

/** An entry in the record of changes. */
export interface ChangeEntry {
  readonly thing: string;
  readonly thingId: string;
  readonly thingVersion: number;
  readonly deed: 'create' | 'change' | 'retire' | 'restore';
  readonly before: Readonly<Record<string, unknown>>;
  readonly after: Readonly<Record<string, unknown>>;
}

/** A column of a table: its property in the row class, its name and its type in the database. */
interface ColumnOf {
  readonly property: string;
  readonly name: string;
  readonly type: string;
}

function columnsOf(tx: OrganizationTransaction, table: KeptTable): readonly ColumnOf[] {
  return tx.of<KeptThing>(table).metadata.columns.map((column) => ({
    property: column.propertyName,
    name: column.databaseName,
    type: `${String(column.type)}${column.isArray ? '[]' : ''}`,
  }));
}

const recordset = (columns: readonly ColumnOf[]): string =>
  `json_to_recordset($1) as new (${columns.map(({ property, type }) => `"${property}" ${type}`).join(', ')})`;

const INSERT_CHANGES = `insert into change (organization_id, id, thing, thing_id, thing_version, deed, before, after, person_id, way)
select $2, gen_random_uuid(), new.thing, new."thingId", new."thingVersion", new.deed, new.before, new.after, $3, $4
from json_to_recordset($1) as new (thing text, "thingId" uuid, "thingVersion" integer, deed text, before jsonb, after jsonb)`;

/** All SQL of kept things in bulk: a statement each, however many rows. */
export const keptMerge = {
  /** The names of the columns that a table keeps. */
  properties(tx: OrganizationTransaction, table: KeptTable): readonly string[] {
    return columnsOf(tx, table).map(({ property }) => property);
  },

  /** The rows of some ids, locked until the transaction ends. */
  async ofIds(tx: OrganizationTransaction, table: KeptTable, ids: readonly string[]): Promise<Map<string, KeptThing>> {
    const found = await tx.of<KeptThing>(table).find({
      where: { organizationId: tx.organizationId, id: Any([...ids]) },
      lock: { mode: 'pessimistic_write' },
    });
    return new Map(found.map((one) => [one.id, one]));
  },

  /** For each set of columns the id of the row that has them, or null. Blank is equal to blank. */
  async idsOfKeys(tx: OrganizationTransaction, table: KeptTable, keys: readonly Values[]): Promise<(string | null)[]> {
    const names = Object.keys(keys[0] ?? {});
    if (!names.length) return [];
    const columns = columnsOf(tx, table).filter(({ property }) => names.includes(property));
    const same = columns.map(({ property, name }) => `kept.${name} is not distinct from new."${property}"`).join(' and ');
    const sought = [...columns, { property: 'at', name: 'at', type: 'integer' }];
    const found = await tx.query<{ at: number; id: string }>(
      `select new.at, kept.id from ${recordset(sought)} join ${table} kept on ${same} where kept.organization_id = $2`,
      [JSON.stringify(keys.map((key, at) => ({ ...key, at }))), tx.organizationId],
    );
    const ids = new Map(found.map(({ at, id }) => [at, id]));
    return keys.map((_, at) => ids.get(at) ?? null);
  },

  async insert(tx: OrganizationTransaction, table: KeptTable, rows: readonly object[]): Promise<void> {
    if (!rows.length) return;
    const columns = columnsOf(tx, table);
    const values = columns.map(({ property }) => `new."${property}"`).join(', ');
    await tx.query(`insert into ${table} (${columns.map(({ name }) => name).join(', ')}) select ${values} from ${recordset(columns)}`, [
      JSON.stringify(rows),
    ]);
  },

  async update(tx: OrganizationTransaction, table: KeptTable, rows: readonly object[]): Promise<void> {
    if (!rows.length) return;
    const columns = columnsOf(tx, table);
    const sets = columns
      .filter(({ property }) => property !== 'organizationId' && property !== 'id')
      .map(({ property, name }) => `${name} = new."${property}"`);
    await tx.query(
      `update ${table} set ${sets.join(', ')} from ${recordset(columns)} where ${table}.organization_id = $2 and ${table}.id = new.id`,
      [JSON.stringify(rows), tx.organizationId],
    );
  },

  async note(tx: OrganizationTransaction, entries: readonly ChangeEntry[]): Promise<void> {
    if (!entries.length) return;
    await tx.query(INSERT_CHANGES, [JSON.stringify(entries), tx.organizationId, tx.actor.personId, tx.actor.way]);
  },
};
