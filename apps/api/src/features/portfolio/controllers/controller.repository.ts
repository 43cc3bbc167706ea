import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';

interface Watered {
  readonly count: number;
  readonly elsewhere: number;
  /** null without zones */
  readonly highestStation: number | null;
}

/** Questions about controllers that no loader answers. */
export const controllers = {
  /** How many zones in use a controller waters, how many of them on another property than one named, and up to which station. */
  async zonesOf(tx: OrganizationTransaction, id: string, propertyId: string | null = null): Promise<Watered> {
    const [row] = await tx.query<Watered>(
      'select count(*)::integer as count, count(*) filter (where property_id <> $3::uuid)::integer as elsewhere, max(station) as "highestStation" from zone where organization_id = $1 and controller_id = $2 and retired_at is null',
      [tx.organizationId, id, propertyId],
    );
    return row!;
  },
};
