import type { DecidedFinding } from '@rillbook/metering/detection/life/precision.js';
import { In, type FindOptionsWhere } from 'typeorm';
import { dateArray, float8Array, textArray, uuidArray } from '../../platform/database/binary-arrays.js';
import type { OrganizationTransaction } from '../../platform/database/organization-transaction.js';
import { grouped } from '../../platform/graphql/loader.js';
import { FindingRow, type FindingState } from './finding.entity.js';

/** What a list of findings may be narrowed to. */
export interface FindingFilter {
  readonly states?: readonly string[] | null;
  readonly kind?: string | null;
  readonly propertyIds?: readonly string[] | null;
}

/** A finding as it is opened; what nobody says of it stands as the table has it. */
export type NewFinding = Partial<FindingRow> & Pick<FindingRow, 'id' | 'propertyId' | 'causeKey' | 'openedAt'>;

/** What changes of a finding. */
export interface FindingChange {
  readonly id: string;
  readonly values: Partial<FindingRow>;
}

/** A column's name and type, and what stands in it in a new finding of which it is not said. */
type Written = readonly [name: string, type: string, otherwise?: string];

/** Every column that is written, but the organization's. */
const WRITTEN: Readonly<Record<Exclude<keyof FindingRow, 'organizationId'>, Written>> = {
  id: ['id', 'uuid'],
  propertyId: ['property_id', 'uuid'],
  meterId: ['meter_id', 'uuid'],
  controllerId: ['controller_id', 'uuid'],
  zoneId: ['zone_id', 'uuid'],
  kind: ['kind', 'text'],
  causeKey: ['cause_key', 'text'],
  causeFamily: ['cause_family', 'text', `''`],
  state: ['state', 'text', `'open'`],
  fromOn: ['from_on', 'date'],
  untilOn: ['until_on', 'date'],
  litres: ['litres', 'float8'],
  money: ['money', 'float8'],
  confidence: ['confidence', 'float8'],
  says: ['says', 'jsonb'],
  evidence: ['evidence', 'jsonb', `'{}'`],
  openedAt: ['opened_at', 'timestamptz'],
  clearedAt: ['cleared_at', 'timestamptz'],
  history: ['history', 'jsonb', `'[]'`],
  cameBack: ['came_back', 'integer', '0'],
  dismissedWhy: ['dismissed_why', 'text'],
  dismissedReason: ['dismissed_reason', 'text'],
  resolvedWith: ['resolved_with', 'text'],
  acknowledgedUntil: ['acknowledged_until', 'date'],
  acknowledgedAt: ['acknowledged_at', 'timestamptz'],
  acknowledgedNote: ['acknowledged_note', 'text'],
  acknowledgedBy: ['acknowledged_by', 'uuid'],
  decidedBy: ['decided_by', 'uuid'],
  decidedAt: ['decided_at', 'timestamptz'],
  version: ['version', 'integer', '1'],
};

const COLUMNS = Object.entries(WRITTEN);

/** Findings as rows of one JSON text, `$2`; keys are those of the row. */
const rowsOf = (columns: readonly (readonly [string, Written])[]): string =>
  `json_to_recordset($2) as r(${columns.map(([key, [, type]]) => `"${key}" ${type}`).join(', ')})`;

/** Adds findings whose rows say these columns, each column as one parameter from `$2` on; `$1` is the organization. */
function insertion(said: typeof COLUMNS): string {
  const keys = said.map(([key]) => key);
  const values = COLUMNS.map(([key, [, type, otherwise = 'null']]) => {
    if (!keys.includes(key)) return otherwise;
    return otherwise === 'null' ? `r."${key}"::${type}` : `coalesce(r."${key}"::${type}, ${otherwise})`;
  });
  return `insert into finding (organization_id, ${COLUMNS.map(([, [name]]) => name).join(', ')}) select $1::uuid, ${values.join(', ')}
    from unnest(${said.map(([, [, type]], at) => `$${at + 2}::${ARRAYS[type] ? type : 'text'}[]`).join(', ')}) as r(${keys.map((key) => `"${key}"`).join(', ')})`;
}

/** What is written as the wire has it; everything else is text, which the database reads. */
const ARRAYS: Readonly<Record<string, (values: readonly unknown[]) => Buffer>> = {
  uuid: (values) => uuidArray(values as (string | null)[]),
  date: (values) => dateArray(values as (string | null)[]),
  float8: (values) => float8Array(values as (number | null)[]),
};

function asText(value: unknown, type: string): string | null {
  if (value === null || value === undefined) return null;
  if (value instanceof Date) return value.toISOString();
  return type === 'jsonb' ? JSON.stringify(value) : String(value);
}

function columnOf(rows: readonly NewFinding[], [key, [, type]]: (typeof COLUMNS)[number]): Buffer {
  const values = rows.map((row) => row[key as keyof FindingRow] ?? null);
  return ARRAYS[type]?.(values) ?? textArray(values.map((value) => asText(value, type)));
}

/** Changes some columns of findings by their ids: `$1` is the organization. */
function change(keys: readonly string[]): string {
  const columns = COLUMNS.filter(([key]) => keys.includes(key));
  return `update finding f set ${columns.map(([key, [name]]) => `${name} = r."${key}"`).join(', ')}
    from ${rowsOf([['id', WRITTEN.id], ...columns])} where f.organization_id = $1 and f.id = r.id`;
}

const keysOf = (values: FindingChange['values']): readonly string[] =>
  COLUMNS.flatMap(([key]) => (values[key as keyof FindingRow] === undefined ? [] : [key]));

/** All SQL of findings. */
export const findings = {
  /** The costliest first; those whose cost is not known come after, the largest volume first. */
  list(tx: OrganizationTransaction, filter: FindingFilter): Promise<FindingRow[]> {
    const where: FindOptionsWhere<FindingRow> = { organizationId: tx.organizationId };
    if (filter.states) where.state = In([...filter.states] as FindingState[]);
    if (filter.kind) where.kind = filter.kind;
    if (filter.propertyIds) where.propertyId = In([...filter.propertyIds]);
    return tx.of(FindingRow).find({
      where,
      order: { money: { direction: 'DESC', nulls: 'LAST' }, litres: { direction: 'DESC', nulls: 'LAST' }, openedAt: 'ASC', id: 'ASC' },
    });
  },

  ofIds(tx: OrganizationTransaction, ids: readonly string[]): Promise<FindingRow[]> {
    return tx.of(FindingRow).findBy({ organizationId: tx.organizationId, id: In([...ids]) });
  },

  async ofProperties(tx: OrganizationTransaction, propertyIds: readonly string[]): Promise<Map<string, FindingRow[]>> {
    return grouped(await findings.list(tx, { propertyIds }), (row) => row.propertyId);
  },

  /** Those that say something of a reading. */
  async ofReadings(tx: OrganizationTransaction, readingIds: readonly string[]): Promise<Map<string, FindingRow[]>> {
    const rows = await tx
      .of(FindingRow)
      .createQueryBuilder('finding')
      .where('finding.organizationId = :organization and finding.kind = :kind', {
        organization: tx.organizationId,
        kind: 'doubtful reading',
      })
      .andWhere(`finding.evidence ->> 'readingId' = any(:ids)`, { ids: readingIds })
      .getMany();
    return grouped(rows, (row) => String(row.evidence['readingId']));
  },

  /** Those that a person decided, with whether there was work for them; work that was dropped is none. */
  decided(tx: OrganizationTransaction): Promise<DecidedFinding[]> {
    return tx.query<DecidedFinding>(
      `select kind, state, dismissed_reason as "dismissedReason",
        exists (select from work_order o where o.organization_id = f.organization_id and o.finding_id = f.id and o.state <> 'dropped') as "hadWork"
        from finding f where organization_id = $1 and decided_by is not null and state <> 'open'`,
      [tx.organizationId],
    );
  },

  ofCause(tx: OrganizationTransaction, propertyId: string, causeKey: string): Promise<FindingRow | null> {
    return tx.of(FindingRow).findOneBy({ organizationId: tx.organizationId, propertyId, causeKey });
  },

  /** Locked until the transaction ends, so that two decisions come one after the other. */
  locked(tx: OrganizationTransaction, id: string): Promise<FindingRow | null> {
    return tx.of(FindingRow).findOne({ where: { organizationId: tx.organizationId, id }, lock: { mode: 'pessimistic_write' } });
  },

  /** Adds findings, each column as one parameter. */
  async insert(tx: OrganizationTransaction, rows: readonly NewFinding[]): Promise<void> {
    if (!rows.length) return;
    const keys = new Set(rows.flatMap(keysOf));
    const said = COLUMNS.filter(([key]) => keys.has(key));
    await tx.query(insertion(said), [tx.organizationId, ...said.map((column) => columnOf(rows, column))]);
  },

  async remove(tx: OrganizationTransaction, ids: readonly string[]): Promise<void> {
    if (ids.length) await tx.of(FindingRow).delete({ organizationId: tx.organizationId, id: In([...ids]) });
  },

  /** Changes findings: those of which the same is said together. */
  async update(tx: OrganizationTransaction, changes: readonly FindingChange[]): Promise<void> {
    const alike = grouped(changes, ({ values }) => keysOf(values).join());
    for (const some of alike.values()) {
      const rows = some.map(({ id, values }) => ({ ...values, id }));
      await tx.query(change(keysOf(some[0]!.values)), [tx.organizationId, JSON.stringify(rows)]);
    }
  },
};
