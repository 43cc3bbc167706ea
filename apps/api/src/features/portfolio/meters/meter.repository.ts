import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';

interface Pointing {
  readonly count: number;
  readonly elsewhere: number;
}

/** Questions about meters that no loader answers. */
export const meters = {
  /** How many zones in use count with a meter, and how many of them stand on another property than one named. */
  async zonesOf(tx: OrganizationTransaction, id: string, propertyId: string | null = null): Promise<Pointing> {
    const [row] = await tx.query<Pointing>(
      'select count(*)::integer as count, count(*) filter (where property_id <> $3::uuid)::integer as elsewhere from zone where organization_id = $1 and meter_id = $2 and retired_at is null',
      [tx.organizationId, id, propertyId],
    );
    return row!;
  },
};
