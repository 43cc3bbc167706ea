import { In } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { byteaArray, dateArray, float8Array, textArray, uuidArray } from '../../../platform/database/binary-arrays.js';
import { grouped } from '../../../platform/graphql/loader.js';
import { MonthAccountRow } from './month-account.entity.js';
import type { AccountDetail } from './packed-columns.js';
import { detailOf } from './kept-detail.js';

/** A month's account as it is kept: the version of what it was computed from, and the account when it is asked for. */
export interface KeptMonth {
  readonly version: string;
  /** null where nobody asks for the account: it is the most of what is kept, and stays where it is */
  readonly packed: Buffer | null;
  /** null where it was kept before months were judged apart */
  readonly judged: Buffer | null;
  readonly detail: () => AccountDetail;
}

/** A month, as 'YYYY-MM', of a property. */
export interface PropertyMonth {
  readonly propertyId: string;
  readonly month: string;
}

/** An account as it is written, its detail packed: its id and time are given by the database. */
export type NewAccount = Omit<MonthAccountRow, 'organizationId' | 'id' | 'computedAt' | 'detail'> & { readonly detail: Buffer };

/** The columns that are written, and how many values of one become a parameter. */
const WRITTEN = {
  propertyId: ['property_id', 'uuid'],
  meterId: ['meter_id', 'uuid'],
  month: ['month', 'date'],
  throughOn: ['through_on', 'date'],
  allowedL: ['allowed_l', 'float8'],
  allowedSdL: ['allowed_sd_l', 'float8'],
  neededL: ['needed_l', 'float8'],
  neededSdL: ['needed_sd_l', 'float8'],
  programmedL: ['programmed_l', 'float8'],
  programmedSdL: ['programmed_sd_l', 'float8'],
  meteredL: ['metered_l', 'float8'],
  meteredSdL: ['metered_sd_l', 'float8'],
  overL: ['over_l', 'float8'],
  underL: ['under_l', 'float8'],
  aboveNeedL: ['above_need_l', 'float8'],
  aboveNeedSdL: ['above_need_sd_l', 'float8'],
  aboveNeedMoney: ['above_need_money', 'float8'],
  detail: ['detail', 'bytea'],
  judged: ['judged', 'bytea'],
  inputsVersion: ['inputs_version', 'text'],
} as const satisfies Record<keyof NewAccount, readonly [string, 'uuid' | 'date' | 'float8' | 'bytea' | 'text']>;

const COLUMNS: Readonly<Record<'uuid' | 'date' | 'float8' | 'bytea' | 'text', (values: readonly unknown[]) => Buffer>> = {
  uuid: (values) => uuidArray(values as (string | null)[]),
  date: (values) => dateArray(values as (string | null)[]),
  float8: (values) => float8Array(values as (number | null)[]),
  text: (values) => textArray(values as (string | null)[]),
  bytea: (values) => byteaArray(values as (Buffer | null)[]),
};

/**
 * Whose account a computation may ask for: the newest month's for its price, those that were kept before months were judged apart, and those
 * that the winter share of a mixed meter is taken from.
 */
const ASKED_FOR = `a.judged is null or a.month = max(a.month) over (partition by a.property_id) or exists (select from meter where meter.organization_id = a.organization_id and meter.property_id = a.property_id and meter.kind = 'mixed' and meter.indoor_l_per_day is null)`;

const firstOf = (month: string): string => `${month}-01`;

/** All SQL of month accounts. */
export const monthAccounts = {
  /** The property's own accounts of some properties, oldest first. */
  async ofProperties(tx: OrganizationTransaction, propertyIds: readonly string[]): Promise<Map<string, MonthAccountRow[]>> {
    const rows = await tx
      .of(MonthAccountRow)
      .find({ where: { organizationId: tx.organizationId, propertyId: In([...propertyIds]) }, order: { month: 'ASC' } });
    return grouped(rows, (row) => row.propertyId);
  },

  /** The accounts of these ids. */
  ofIds(tx: OrganizationTransaction, ids: readonly string[]): Promise<MonthAccountRow[]> {
    return tx.of(MonthAccountRow).findBy({ organizationId: tx.organizationId, id: In([...ids]) });
  },

  /** The property's own accounts of some properties by month, with what they were computed from. */
  async keptMonths(tx: OrganizationTransaction, propertyIds: readonly string[]): Promise<Map<string, Map<string, KeptMonth>>> {
    const rows = await tx.query<{ propertyId: string; month: string; version: string; detail: Buffer | null; judged: Buffer | null }>(
      `select property_id as "propertyId", to_char(month, 'YYYY-MM') as month, inputs_version as version, case when ${ASKED_FOR} then detail end as detail, judged from month_account a where organization_id = $1 and property_id = any($2) and meter_id is null`,
      [tx.organizationId, propertyIds],
    );
    const kept = new Map<string, Map<string, KeptMonth>>(propertyIds.map((id) => [id, new Map()]));
    for (const { propertyId, month, version, detail, judged } of rows)
      kept.get(propertyId)?.set(month, { version, packed: detail, judged, detail: () => detailOf(detail, month) });
    return kept;
  },

  /** Takes away the accounts of some properties, all but those of the months named. */
  async keepOnly(tx: OrganizationTransaction, propertyIds: readonly string[], standing: readonly PropertyMonth[]): Promise<void> {
    await tx.query(
      `delete from month_account a where organization_id = $1 and property_id = any($2)
        and not exists (select from unnest($3::uuid[], $4::date[]) as standing(property_id, month) where standing.property_id = a.property_id and standing.month = a.month)`,
      [
        tx.organizationId,
        propertyIds,
        uuidArray(standing.map(({ propertyId }) => propertyId)),
        dateArray(standing.map(({ month }) => firstOf(month))),
      ],
    );
  },

  /** Adds accounts, each column as one parameter. */
  async insert(tx: OrganizationTransaction, rows: readonly NewAccount[]): Promise<void> {
    if (!rows.length) return;
    const columns = Object.values(WRITTEN);
    await tx.query(
      `insert into month_account (organization_id, ${columns.map(([name]) => name).join(', ')})
        select $1::uuid, * from unnest(${columns.map(([, type], at) => `$${at + 2}::${type}[]`).join(', ')})`,
      [
        tx.organizationId,
        ...Object.entries(WRITTEN).map(([key, [, type]]) => COLUMNS[type](rows.map((row) => row[key as keyof NewAccount]))),
      ],
    );
  },

  /** The months that have an account of any property, the newest first. */
  async months(tx: OrganizationTransaction): Promise<string[]> {
    const rows = await tx.query<{ month: string }>(
      `select distinct to_char(month, 'YYYY-MM') as month from month_account where organization_id = $1 and meter_id is null order by 1 desc`,
      [tx.organizationId],
    );
    return rows.map((row) => row.month);
  },
};
