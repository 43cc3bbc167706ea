import type { TestDatabase } from '../test-database.js';

/** A column as the database knows it. */
export interface Column {
  readonly table: string;
  readonly name: string;
  readonly type: string;
  readonly nullable: boolean;
  readonly hasDefault: boolean;
}

/** A foreign key: the column beside organization_id that points, and where to. */
export interface Pointer {
  readonly table: string;
  readonly column: string;
  readonly to: string;
}

/** What the database says of its own tables. */
export interface Catalogue {
  readonly tables: readonly string[];
  readonly columns: readonly Column[];
  readonly pointers: readonly Pointer[];
  /** the first word that a column's list of known words allows, by 'table.column' */
  readonly words: ReadonlyMap<string, string>;
}

/** Tables that belong to nobody and the application may not read: the driver's list of migrations, and one fact about the server. */
const NOBODYS = ['migrations', 'demo_cleared'];

/** Reads the catalogue of the public schema. */
export async function readCatalogue({ admin }: TestDatabase): Promise<Catalogue> {
  const columns = await admin<Column>(
    `select cls.relname as table, att.attname as name, format_type(att.atttypid, att.atttypmod) as type, not att.attnotnull as nullable, att.atthasdef as "hasDefault"
    from pg_attribute att join pg_class cls on cls.oid = att.attrelid
    where cls.relnamespace = 'public'::regnamespace and cls.relkind = 'r' and att.attnum > 0 and not att.attisdropped and cls.relname <> all($1) order by cls.relname, att.attnum`,
    [NOBODYS],
  );
  const pointers =
    await admin<Pointer>(`select conrelid::regclass::text as table, conf.confrelid::regclass::text as to, att.attname as column
    from pg_constraint conf join pg_attribute att on att.attrelid = conf.conrelid and att.attnum = any(conf.conkey)
    where contype = 'f' and connamespace = 'public'::regnamespace and (cardinality(conkey) = 1 or att.attname <> 'organization_id')`);
  const checks = await admin<{
    table: string;
    column: string;
    definition: string;
  }>(`select conrelid::regclass::text as table, att.attname as column, pg_get_constraintdef(con.oid) as definition
    from pg_constraint con join pg_attribute att on att.attrelid = con.conrelid and con.conkey = array[att.attnum] where contype = 'c' and connamespace = 'public'::regnamespace`);
  const words = checks.flatMap(({ table, column, definition }) => {
    const [, word] = /ARRAY\['([^']+)'/.exec(definition) ?? [];
    return word ? [[`${table}.${column}`, word] as const] : [];
  });
  return { tables: [...new Set(columns.map((column) => column.table))], columns, pointers, words: new Map(words) };
}

/** The tables, each after those that it points at. */
export function inOrder({ tables, pointers }: Catalogue): string[] {
  const ordered: string[] = [];
  const visit = (table: string): void => {
    if (ordered.includes(table)) return;
    for (const pointer of pointers) if (pointer.table === table && pointer.to !== table) visit(pointer.to);
    if (!ordered.includes(table)) ordered.push(table);
  };
  for (const table of tables) visit(table);
  return ordered;
}
