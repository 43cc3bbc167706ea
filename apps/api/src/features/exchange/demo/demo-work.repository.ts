import { randomUUID } from 'node:crypto';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';

/** A finding that was over when work had been done. */
export interface EndedFinding {
  readonly id: string;
  readonly controllerId: string | null;
  readonly meterId: string | null;
  readonly zoneId: string | null;
}

/** A picture of finished work, and its file. */
export interface PhotoOfWork {
  readonly kind: string;
  readonly word: string;
  readonly of: {
    readonly propertyId: string;
    readonly workOrderId: string;
    readonly findingId: string | null;
    readonly personId: string;
    readonly takenAt: Date;
  };
  readonly file: Readonly<Record<'sentSha256' | 'fileSha256', string>> & Readonly<Record<'fileBytes' | 'width' | 'height', number>>;
}

/** All SQL of work that was finished before the demonstration's day. */
export const demoWork = {
  /** The costliest finding of some kinds that was seen before a day and is over: the kinds named first are meant first. */
  async endedFinding(tx: OrganizationTransaction, propertyId: string, kinds: readonly string[], on: string): Promise<EndedFinding | null> {
    const [found] = await tx.query<EndedFinding>(
      `select id, controller_id as "controllerId", meter_id as "meterId", zone_id as "zoneId" from finding
        where organization_id = $1 and property_id = $2 and kind = any($3::text[]) and state = 'resolved' and from_on <= $4::date and until_on >= $4::date - 60
        order by array_position($3::text[], kind), litres desc nulls last, id limit 1`,
      [tx.organizationId, propertyId, kinds, on],
    );
    return found ?? null;
  },

  /** Writes down that an order was done then, and that its finding ended with it. */
  async finish(
    tx: OrganizationTransaction,
    done: { readonly workOrderId: string; readonly findingId: string | null; readonly note: string; readonly doneAt: Date },
  ): Promise<void> {
    await tx.query(
      `update work_order set state = 'done', done_note = $3, done_at = $4, created_at = $4::timestamptz - interval '6 days' where organization_id = $1 and id = $2`,
      [tx.organizationId, done.workOrderId, done.note, done.doneAt],
    );
    await tx.query('update finding set resolved_with = $3, decided_by = $4, decided_at = $5 where organization_id = $1 and id = $2', [
      tx.organizationId,
      done.findingId,
      done.note,
      tx.actor.personId,
      done.doneAt,
    ]);
  },

  async personId(tx: OrganizationTransaction, name: string): Promise<string> {
    const [row] = await tx.query<{ id: string }>(
      'select person.id from member join person on person.id = member.person_id where member.organization_id = $1 and person.name = $2',
      [tx.organizationId, name],
    );
    if (!row) throw new TypeError(`the demonstration's finished work names "${name}", who is none of its people`);
    return row.id;
  },

  async addPhoto(tx: OrganizationTransaction, { kind, word, of, file }: PhotoOfWork): Promise<void> {
    await tx.query(
      `insert into photo (organization_id, id, property_id, work_order_id, finding_id, kind, word, taken_at, person_id, announced_at, arrived_at, sent_sha256, file_sha256, file_bytes, width, height)
        values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $8, $8, $10, $11, $12, $13, $14)`,
      [
        ...[tx.organizationId, randomUUID(), of.propertyId, of.workOrderId, of.findingId, kind, word, of.takenAt, of.personId],
        ...[file.sentSha256, file.fileSha256, file.fileBytes, file.width, file.height],
      ],
    );
  },
};
