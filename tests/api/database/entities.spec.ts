import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DataSource, EntityMetadata } from 'typeorm';
import { entities } from '../../../apps/api/src/entities.js';
import { appDataSource } from '../../../apps/api/src/platform/database/data-source.js';
import { type TestDatabase, cloneDatabase } from '../../support/test-database.js';

/** One column, said the same way of both sides. */
interface ColumnFact {
  readonly type: string;
  readonly nullable: boolean;
  readonly key: boolean;
}

type Table = Readonly<Record<string, ColumnFact>>;

let database: TestDatabase;
let source: DataSource;

beforeAll(async () => {
  database = await cloneDatabase();
  source = await appDataSource(database.appUrl, entities).initialize();
});
afterAll(async () => {
  await source.destroy();
  await database.drop();
});

const TYPES: Readonly<Record<string, string>> = {
  int4: 'integer',
  float8: 'double precision',
  bool: 'boolean',
  timestamptz: 'timestamptz',
  varchar: 'text',
};

async function inDatabase(table: string): Promise<Table> {
  const columns = await database.admin<{ name: string; type: string; nullable: boolean }>(
    `select column_name as name, udt_name as type, is_nullable = 'YES' as nullable from information_schema.columns where table_schema = 'public' and table_name = $1`,
    [table],
  );
  const keys = await database.admin<{ name: string }>(
    `select k.column_name as name from information_schema.table_constraints c join information_schema.key_column_usage k using (constraint_schema, constraint_name) where c.constraint_type = 'PRIMARY KEY' and c.table_schema = 'public' and c.table_name = $1`,
    [table],
  );
  const keyed = new Set(keys.map((key) => key.name));
  const typed = (type: string): string => (type.startsWith('_') ? `${typed(type.slice(1))}[]` : (TYPES[type] ?? type));
  return Object.fromEntries(columns.map(({ name, type, nullable }) => [name, { type: typed(type), nullable, key: keyed.has(name) }]));
}

function inEntity(metadata: EntityMetadata): Table {
  const typed = (type: unknown): string => TYPES[String(type)] ?? String(type);
  return Object.fromEntries(
    metadata.columns.map((column) => [
      column.databaseName,
      { type: `${typed(column.type)}${column.isArray ? '[]' : ''}`, nullable: column.isNullable, key: column.isPrimary },
    ]),
  );
}

describe('entities and database say the same', () => {
  it.each(entities.map((entity) => [entity.name, entity] as const))('%s', async (_, entity) => {
    const metadata = source.getMetadata(entity);
    const there = await inDatabase(metadata.tableName);
    expect(Object.keys(there), `table ${metadata.tableName}`).not.toHaveLength(0);
    expect(inEntity(metadata)).toEqual(there);
  });
});

it('no two entities keep one table', () => {
  const tables = source.entityMetadatas.map((metadata) => metadata.tableName);
  expect(new Set(tables).size).toBe(tables.length);
});
