import { In, MoreThan } from 'typeorm';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { type ZoneTestKind, ZoneTestRow } from './zone-test.entity.js';

/** All SQL of tests of zones. */
export const zoneTests = {
  /** In the order in which they were made. */
  ofVisits(tx: OrganizationTransaction, visitIds: readonly string[]): Promise<ZoneTestRow[]> {
    return tx
      .of(ZoneTestRow)
      .find({ where: { organizationId: tx.organizationId, visitId: In([...visitIds]) }, order: { testedAt: 'ASC', id: 'ASC' } });
  },

  ofId(tx: OrganizationTransaction, id: string): Promise<ZoneTestRow | null> {
    return tx.of(ZoneTestRow).findOneBy({ organizationId: tx.organizationId, id });
  },

  /** Whether a later test of the zone and kind stands on record. */
  hasLater(tx: OrganizationTransaction, zoneId: string, kind: ZoneTestKind, testedAt: Date): Promise<boolean> {
    return tx.of(ZoneTestRow).existsBy({ organizationId: tx.organizationId, zoneId, kind, onRecord: true, testedAt: MoreThan(testedAt) });
  },

  async insert(tx: OrganizationTransaction, row: Omit<ZoneTestRow, 'receivedAt'>): Promise<void> {
    await tx.of(ZoneTestRow).insert(row);
  },
};
