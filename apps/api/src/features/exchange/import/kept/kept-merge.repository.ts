import { Any, type EntityTarget, type FindOptionsWhere } from 'typeorm';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import type { KeptRow } from '../../../../platform/records/kept-row.js';

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

function columnsOf<Row extends KeptRow>(tx: OrganizationTransaction, row: EntityTarget<Row>): readonly ColumnOf[] {
  return tx.of(row).metadata.columns.map((column) => ({
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
  /** The columns that a row class keeps beside those that every kept thing has. */
  properties<Row extends KeptRow>(tx: OrganizationTransaction, row: EntityTarget<Row>): readonly string[] {
    return columnsOf(tx, row).map(({ property }) => property);
  },

  table<Row extends KeptRow>(tx: OrganizationTransaction, row: EntityTarget<Row>): string {
    return tx.of(row).metadata.tableName;
  },

  /** The rows of some ids, locked until the transaction ends. */
  async ofIds<Row extends KeptRow>(tx: OrganizationTransaction, row: EntityTarget<Row>, ids: readonly string[]): Promise<Map<string, Row>> {
    const found = await tx.of(row).find({
      where: { organizationId: tx.organizationId, id: Any([...ids]) } as unknown as FindOptionsWhere<Row>,
      lock: { mode: 'pessimistic_write' },
    });
    return new Map(found.map((one) => [one.id, one]));
  },

  /** For each set of columns the id of the row that has them, or null. Blank is equal to blank. */
  async idsOfKeys<Row extends KeptRow>(
    tx: OrganizationTransaction,
    row: EntityTarget<Row>,
    keys: readonly Partial<Row>[],
  ): Promise<(string | null)[]> {
    const names = Object.keys(keys[0] ?? {});
    if (!names.length) return [];
    const columns = columnsOf(tx, row).filter(({ property }) => names.includes(property));
    const same = columns.map(({ property, name }) => `kept.${name} is not distinct from new."${property}"`).join(' and ');
    const sought = [...columns, { property: 'at', name: 'at', type: 'integer' }];
    const found = await tx.query<{ at: number; id: string }>(
      `select new.at, kept.id from ${recordset(sought)} join ${keptMerge.table(tx, row)} kept on ${same} where kept.organization_id = $2`,
      [JSON.stringify(keys.map((key, at) => ({ ...key, at }))), tx.organizationId],
    );
    const ids = new Map(found.map(({ at, id }) => [at, id]));
    return keys.map((_, at) => ids.get(at) ?? null);
  },

  async insert<Row extends KeptRow>(tx: OrganizationTransaction, row: EntityTarget<Row>, rows: readonly object[]): Promise<void> {
    if (!rows.length) return;
    const columns = columnsOf(tx, row);
    const values = columns.map(({ property }) => `new."${property}"`).join(', ');
    await tx.query(
      `insert into ${keptMerge.table(tx, row)} (${columns.map(({ name }) => name).join(', ')}) select ${values} from ${recordset(columns)}`,
      [JSON.stringify(rows)],
    );
  },

  async update<Row extends KeptRow>(tx: OrganizationTransaction, row: EntityTarget<Row>, rows: readonly object[]): Promise<void> {
    if (!rows.length) return;
    const table = keptMerge.table(tx, row);
    const columns = columnsOf(tx, row);
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
