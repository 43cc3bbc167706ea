import { Any, IsNull, LessThan } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { grouped } from '../../../platform/graphql/loader.js';
import { ReadingRow, type ReadingSource } from './reading.entity.js';

/** A reading to be kept; `replacesId` is the one that it stands in for from now on. */
export interface NewReading {
  readonly id: string;
  readonly meterId: string;
  readonly readAt: Date;
  readonly register: number;
  readonly source: ReadingSource;
  readonly note: string | null;
  readonly deviceRecordId: string | null;
  readonly typed: Record<string, string>;
  readonly replacesId: string | null;
}

/** A meter and an instant: the name of a standing reading. */
export interface MeterInstant {
  readonly meterId: string;
  readonly readAt: Date;
}

const NEW = `json_to_recordset($2) as new (id uuid, "meterId" uuid, "readAt" timestamptz, register double precision, source text, note text, "deviceRecordId" uuid, typed jsonb, "replacesId" uuid)`;

// One statement: the replaced row gives up its place just before the new one takes it, and the foreign key is looked at when both are done.
const INSERT = `with new as (select * from ${NEW}),
  replaced as (update reading set replaced_by_id = new.id from new where reading.organization_id = $1 and reading.id = new."replacesId" and reading.replaced_by_id is null returning reading.id)
insert into reading (organization_id, id, meter_id, read_at, register, source, note, device_record_id, person_id, typed)
select $1, new.id, new."meterId", new."readAt", new.register, new.source, new.note, new."deviceRecordId", $3::uuid, new.typed from new
where new."replacesId" is null or new."replacesId" in (select id from replaced)
on conflict do nothing returning id`;

const RENOTE = `update reading set source = new.source, note = new.note, typed = new.typed
from json_to_recordset($2) as new (id uuid, source text, note text, typed jsonb) where reading.organization_id = $1 and reading.id = new.id`;

const STANDING = `select reading.id from json_to_recordset($2) as place ("meterId" uuid, "readAt" timestamptz)
join reading on reading.meter_id = place."meterId" and reading.read_at = place."readAt" where reading.organization_id = $1 and reading.replaced_by_id is null`;

const NEWEST = `select newest.id from unnest($2::uuid[]) as asked (id) cross join lateral (
  select id from reading where organization_id = $1 and meter_id = asked.id order by read_at desc, (replaced_by_id is not null), recorded_at desc limit $3) as newest`;

/** All SQL of readings. */
export const readings = {
  ofDeviceRecord(tx: OrganizationTransaction, deviceRecordId: string): Promise<ReadingRow | null> {
    return tx.of(ReadingRow).findOneBy({ organizationId: tx.organizationId, deviceRecordId });
  },

  ofIds(tx: OrganizationTransaction, ids: readonly string[]): Promise<ReadingRow[]> {
    return tx.of(ReadingRow).findBy({ organizationId: tx.organizationId, id: Any([...ids]) });
  },

  /** The one that a reading stands in for. */
  replacedBy(tx: OrganizationTransaction, id: string): Promise<ReadingRow | null> {
    return tx.of(ReadingRow).findOneBy({ organizationId: tx.organizationId, replacedById: id });
  },

  /** Those that nothing has replaced, at some instants. */
  async standingAt(tx: OrganizationTransaction, places: readonly MeterInstant[]): Promise<ReadingRow[]> {
    const wanted = places.map(({ meterId, readAt }) => ({ meterId, readAt }));
    const found = await tx.query<{ id: string }>(STANDING, [tx.organizationId, JSON.stringify(wanted)]);
    return readings.ofIds(
      tx,
      found.map(({ id }) => id),
    );
  },

  /** The last ones before an instant that nothing has replaced, newest first. */
  before(tx: OrganizationTransaction, { meterId, readAt }: MeterInstant, most: number): Promise<ReadingRow[]> {
    return tx.of(ReadingRow).find({
      where: { organizationId: tx.organizationId, meterId, readAt: LessThan(readAt), replacedById: IsNull() },
      order: { readAt: 'DESC' },
      take: most,
    });
  },

  /** The newest of each meter, replaced ones too: at one instant the one that stands comes first. */
  async newest(tx: OrganizationTransaction, meterIds: readonly string[], most: number): Promise<Map<string, ReadingRow[]>> {
    const found = await tx.query<{ id: string }>(NEWEST, [tx.organizationId, meterIds, most]);
    const rows = await readings.ofIds(
      tx,
      found.map(({ id }) => id),
    );
    const place = new Map(found.map(({ id }, at) => [id, at]));
    return grouped(
      rows.sort((a, b) => place.get(a.id)! - place.get(b.id)!),
      (row) => row.meterId,
    );
  },

  /** Holds the meters until the transaction ends, so that their readings are judged one after the other. */
  async hold(tx: OrganizationTransaction, meterIds: readonly string[]): Promise<void> {
    await tx.query('select id from meter where organization_id = $1 and id = any($2::uuid[]) order by id for no key update', [
      tx.organizationId,
      meterIds,
    ]);
  },

  /** Keeps new readings; the ids of those that found their place. */
  async insert(tx: OrganizationTransaction, rows: readonly NewReading[]): Promise<string[]> {
    const kept = await tx.query<{ id: string }>(INSERT, [tx.organizationId, JSON.stringify(rows), tx.actor.personId]);
    return kept.map(({ id }) => id);
  },

  /** Says something else about readings whose registers stay. */
  async renote(tx: OrganizationTransaction, rows: readonly Pick<ReadingRow, 'id' | 'source' | 'note' | 'typed'>[]): Promise<void> {
    await tx.query(RENOTE, [tx.organizationId, JSON.stringify(rows)]);
  },
};
