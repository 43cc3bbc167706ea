import { In } from 'typeorm';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { isUuid } from '../../../../platform/records/uuid.js';
import { ZoneNoteRow } from './zone-note.entity.js';

/** All SQL of zone notes. */
export const zoneNotes = {
  /** In the order they were recorded. */
  ofVisits(tx: OrganizationTransaction, visitIds: readonly string[]): Promise<ZoneNoteRow[]> {
    return tx
      .of(ZoneNoteRow)
      .find({ where: { organizationId: tx.organizationId, visitId: In([...visitIds]) }, order: { recordedAt: 'ASC', id: 'ASC' } });
  },

  async insert(tx: OrganizationTransaction, row: ZoneNoteRow): Promise<void> {
    await tx.of(ZoneNoteRow).insert(row);
  },

  async update(
    tx: OrganizationTransaction,
    id: string,
    values: Pick<ZoneNoteRow, 'count' | 'word' | 'repaired' | 'personId' | 'recordedAt'>,
  ): Promise<void> {
    await tx.of(ZoneNoteRow).update({ organizationId: tx.organizationId, id }, values);
  },

  /** Whether a zone stands on a property. */
  async standsOn(tx: OrganizationTransaction, zoneId: string, propertyId: string): Promise<boolean> {
    if (!isUuid(zoneId)) return false;
    const rows = await tx.query('select from zone where organization_id = $1 and id = $2 and property_id = $3', [
      tx.organizationId,
      zoneId,
      propertyId,
    ]);
    return rows.length > 0;
  },
};
