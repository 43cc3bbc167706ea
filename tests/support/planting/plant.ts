import { randomBytes, randomUUID } from 'node:crypto';
import type { TestDatabase } from '../test-database.js';
import { type Catalogue, type Column, inOrder, readCatalogue } from './catalogue.js';

/** An organization with one row in every table, and a marker in every free text of it. */
export interface Planted {
  readonly organizationId: string;
  readonly marker: string;
  /** the id of the row of each table that has one */
  readonly ids: Readonly<Record<string, string>>;
}

/** Values that their columns' types and lists of words do not tell. */
const SPECIAL: Readonly<Record<string, unknown>> = {
  'organization.currency': 'USD',
  'member.client_id': null,
  'invitation.client_id': null,
  'reading.replaced_by_id': null,
  'zone.unmetered': false,
  'zone.station': 1,
  'organization.least_confidence': 0.9,
  'settings.programs': '[]',
  'work_order.parts': '[]',
  'visit.materials': '[]',
  'field_operation.verdict': 'conflict',
  'finding.history': '[]',
  // Found this week: the week's page tells of it.
  'finding.opened_at': new Date().toISOString(),
  'visit_terms.hours': '[]',
  'month_plan.before': '[]',
  'month_plan.unplaced': '[]',
  'month_plan.travel': '{}',
  'zone_test.minutes': 4,
  'zone_test.register_before': 100,
  'zone_test.register_after': 140,
  'zone_test.flow_l_per_min': 40,
  'zone_test.catches_ml': [],
  'photo.sent_sha256': null,
  'photo.file_sha256': null,
};
const BY_NAME: Readonly<Record<string, unknown>> = {
  time_zone: 'America/Los_Angeles',
  blocked_from: '08:00',
  blocked_until: '18:00',
  water_from: '22:00',
  water_until: '06:00',
  allowed_days: 'Mon Wed Fri',
  unit: 'CCF',
  retired_at: null,
  accepted_at: null,
  stands_still_on: null,
  typed: '{}',
};
const LATER = /(^end|until|through|to)_?/;

const moment = (name: string): string => `2026-06-15T${LATER.test(name) ? '13' : '12'}:00:00Z`;

const marked = (marker: string): string => JSON.stringify({ code: marker, details: { name: marker } });

/** A value of each type that the usual checks allow. */
const OF_TYPE: readonly (readonly [type: RegExp, make: (name: string, marker: string) => unknown])[] = [
  [/^text$/, (name, marker) => (name === 'email' ? `${marker}@example.test` : `${marker} ${name}`)],
  [/^text\[\]$/, (_, marker) => [`${marker}@example.test`]],
  [/^jsonb$/, (_, marker) => marked(marker)],
  [/^uuid$/, () => randomUUID()],
  // An account's detail is JSON in bytes; other bytes are hashes.
  [/^bytea$/, (name, marker) => (name === 'detail' ? Buffer.from(marked(marker)) : randomBytes(32))],
  [/^boolean$/, () => false],
  [/^date$/, (name) => (LATER.test(name) ? '2026-06-30' : '2026-06-01')],
  [/^timestamp/, (name) => (name === 'expires_at' ? '2099-01-01T00:00:00Z' : moment(name))],
  [/\[\]$/, () => Array.from({ length: 12 }, () => 1)],
  [/^(integer|double precision|smallint|bigint|numeric|real)/, () => 1],
];

function ofType({ type, name }: Column, marker: string): unknown {
  const [, make] = OF_TYPE.find(([pattern]) => pattern.test(type)) ?? [];
  if (!make) throw new Error(`plant.ts knows no value for ${type}: add one.`);
  return make(name, marker);
}

/** A column that holds words, or must be given. */
const isFilled = ({ type, name, nullable, hasDefault }: Column): boolean =>
  name === 'id' || ['text', 'text[]', 'jsonb'].includes(type) || !(nullable || hasDefault);

/** What is planted in a column; undefined leaves it to its default. */
function valueOf(catalogue: Catalogue, column: Column, planted: Planted): unknown {
  const full = `${column.table}.${column.name}`;
  if (column.name === 'organization_id' || full === 'organization.id') return planted.organizationId;
  if (full in SPECIAL) return SPECIAL[full];
  const pointer = catalogue.pointers.find((one) => one.table === column.table && one.column === column.name);
  if (pointer) return planted.ids[pointer.to];
  if (column.name in BY_NAME) return BY_NAME[column.name];
  return catalogue.words.get(full) ?? (isFilled(column) ? ofType(column, planted.marker) : undefined);
}

/** The row that is planted in a table, by column. */
export function rowFor(catalogue: Catalogue, table: string, planted: Planted): Record<string, unknown> {
  const entries = catalogue.columns
    .filter((column) => column.table === table)
    .map((column) => [column.name, valueOf(catalogue, column, planted)] as const);
  return Object.fromEntries(entries.filter(([, value]) => value !== undefined));
}

/** An insert of a row, with bound values. */
export function insertOf(table: string, row: Record<string, unknown>): { sql: string; values: unknown[] } {
  const names = Object.keys(row);
  return {
    sql: `insert into "${table}" (${names.map((name) => `"${name}"`).join(', ')}) values (${names.map((_, index) => `$${index + 1}`).join(', ')})`,
    values: Object.values(row),
  };
}

/** Plants an organization: a new table is planted the day it is made, for the rows follow from the catalogue. */
export async function plant(database: TestDatabase, marker: string): Promise<Planted> {
  const catalogue = await readCatalogue(database);
  const ids: Record<string, string> = {};
  const planted: Planted = { organizationId: randomUUID(), marker, ids };
  ids['organization'] = planted.organizationId;
  for (const table of inOrder(catalogue)) {
    const row = rowFor(catalogue, table, planted);
    const { sql, values } = insertOf(table, row);
    try {
      await database.admin(sql, values);
    } catch (problem) {
      throw new Error(`plant.ts cannot plant ${table}: ${(problem as Error).message}. Name the value in SPECIAL or BY_NAME.`);
    }
    if (typeof row['id'] === 'string') ids[table] = row['id'];
  }
  return planted;
}
