import { In } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { grouped } from '../../../platform/graphql/loader.js';
import { BillRow } from './bill.entity.js';

/** A bill to be kept. */
export type NewBill = Omit<BillRow, 'organizationId' | 'id'>;

const CHANGES = ['end_on', 'volume', 'unit', 'litres', 'amount', 'typed'];

// xmax is 0 in a row that was inserted now, not updated.
const PUT = `insert into bill (organization_id, meter_id, start_on, end_on, volume, unit, litres, amount, typed)
select $1, new.* from json_to_recordset($2) as new ("meterId" uuid, "startOn" date, "endOn" date, volume double precision, unit text, litres double precision, amount double precision, typed jsonb)
order by new."meterId", new."startOn"
on conflict (organization_id, meter_id, start_on) do update set ${CHANGES.map((column) => `${column} = excluded.${column}`).join(', ')}
where (${CHANGES.map((column) => `bill.${column}`).join(', ')}) is distinct from (${CHANGES.map((column) => `excluded.${column}`).join(', ')})
returning bill.xmax = 0 as created`;

/** All SQL of bills. */
export const bills = {
  /** Each meter's, the newest first. */
  async ofMeters(tx: OrganizationTransaction, meterIds: readonly string[]): Promise<Map<string, BillRow[]>> {
    const rows = await tx
      .of(BillRow)
      .find({ where: { organizationId: tx.organizationId, meterId: In([...meterIds]) }, order: { startOn: 'DESC' } });
    return grouped(rows, (row) => row.meterId);
  },

  /** Keeps bills by meter and first day: how many are new, and how many say something else than before. */
  async put(tx: OrganizationTransaction, rows: readonly NewBill[]): Promise<{ created: number; changed: number }> {
    const kept = await tx.query<{ created: boolean }>(PUT, [tx.organizationId, JSON.stringify(rows)]);
    const created = kept.filter((row) => row.created).length;
    return { created, changed: kept.length - created };
  },
};
