import { Any } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { grouped } from '../../../platform/graphql/loader.js';
import { RainPauseRow } from './rain-pause.entity.js';

/** A rain pause to be kept. */
export type NewPause = Omit<RainPauseRow, 'organizationId' | 'id'>;

const NEW = `insert into rain_pause (organization_id, controller_id, paused_from, paused_until, typed)
select $1, new.* from json_to_recordset($2) as new ("controllerId" uuid, "pausedFrom" timestamptz, "pausedUntil" timestamptz, typed jsonb)
order by new."controllerId", new."pausedFrom"`;

const INSERT = `${NEW} on conflict on constraint rain_pause_once do nothing returning id`;

// xmax is 0 in a row that was inserted now, not updated.
const PUT = `${NEW} on conflict on constraint rain_pause_once do update set paused_until = excluded.paused_until, typed = excluded.typed
where (rain_pause.paused_until, rain_pause.typed) is distinct from (excluded.paused_until, excluded.typed)
returning rain_pause.xmax = 0 as created`;

/** All SQL of rain pauses. */
export const pauses = {
  /** Locked until the transaction ends. */
  locked(tx: OrganizationTransaction, id: string): Promise<RainPauseRow | null> {
    return tx.of(RainPauseRow).findOne({ where: { organizationId: tx.organizationId, id }, lock: { mode: 'pessimistic_write' } });
  },

  at(tx: OrganizationTransaction, controllerId: string, pausedFrom: Date): Promise<RainPauseRow | null> {
    return tx.of(RainPauseRow).findOneBy({ organizationId: tx.organizationId, controllerId, pausedFrom });
  },

  /** Each controller's, the newest first. */
  async ofControllers(tx: OrganizationTransaction, controllerIds: readonly string[]): Promise<Map<string, RainPauseRow[]>> {
    const where = { organizationId: tx.organizationId, controllerId: Any([...controllerIds]) };
    return grouped(await tx.of(RainPauseRow).find({ where, order: { pausedFrom: 'DESC' } }), (row) => row.controllerId);
  },

  /** Keeps a pause; false when there is one from that time. */
  async insert(tx: OrganizationTransaction, pause: NewPause): Promise<boolean> {
    return (await tx.query(INSERT, [tx.organizationId, JSON.stringify([pause])])).length > 0;
  },

  async endAt(tx: OrganizationTransaction, id: string, pausedUntil: Date): Promise<void> {
    await tx.of(RainPauseRow).update({ organizationId: tx.organizationId, id }, { pausedUntil, typed: {} });
  },

  /** Keeps pauses by controller and beginning: how many are new, and how many end at another time than before. */
  async put(tx: OrganizationTransaction, rows: readonly NewPause[]): Promise<{ created: number; changed: number }> {
    const kept = await tx.query<{ created: boolean }>(PUT, [tx.organizationId, JSON.stringify(rows)]);
    const created = kept.filter((row) => row.created).length;
    return { created, changed: kept.length - created };
  },
};
