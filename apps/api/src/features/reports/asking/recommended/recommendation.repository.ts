import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';

/** Something that a client may say yes to. */
export interface RecommendationLine {
  readonly id: string;
  readonly from: 'work order' | 'finding';
  readonly version: number;
  readonly propertyId: string;
  readonly propertyName: string;
  readonly zoneName: string | null;
  readonly kind: string;
  readonly what: string;
  readonly cost: number | null;
  readonly litres: number | null;
  readonly money: number | null;
  /** of the finding that an order is for; null where it is for none, and of a finding */
  readonly findingKind: string | null;
  readonly findingZone: string | null;
}

/** As everywhere: hours without a rate are no price. */
const COST = `case when labour_hours is not null then labour_hours * labour_rate + parts.cost when jsonb_array_length(work_order.parts) > 0 then parts.cost end`;

/** All SQL of what is recommended to a client. */
export const recommendations = {
  /** Work that waits for the client's approval, and zones whose plants should be divided; on their own properties. */
  ofClient(tx: OrganizationTransaction, clientId: string): Promise<RecommendationLine[]> {
    return tx.query<RecommendationLine>(
      `select work_order.id, 'work order' as from, work_order.version, property.id as "propertyId", property.name as "propertyName", null::text as "zoneName", work_order.kind, what, ${COST} as cost, null::float8 as litres, null::float8 as money,
           finding.kind as "findingKind", zone.name as "findingZone"
         from work_order join property on property.organization_id = work_order.organization_id and property.id = work_order.property_id
         left join finding on finding.organization_id = work_order.organization_id and finding.id = work_order.finding_id
         left join zone on zone.organization_id = finding.organization_id and zone.id = finding.zone_id
         cross join lateral (select coalesce(sum((part->>'count')::float8 * (part->>'price')::float8), 0) as cost from jsonb_array_elements(work_order.parts) as part) parts
        where work_order.organization_id = $1 and property.client_id = $2 and work_order.state = 'waiting for approval' and work_order.retired_at is null and property.retired_at is null
       union all
       select finding.id, 'finding', finding.version, property.id, property.name, zone.name, finding.kind, '', null, finding.litres, finding.money, null, null
         from finding join property on property.organization_id = finding.organization_id and property.id = finding.property_id
         left join zone on zone.organization_id = finding.organization_id and zone.id = finding.zone_id
        where finding.organization_id = $1 and property.client_id = $2 and finding.state = 'open' and finding.kind = 'mixed water needs' and property.retired_at is null
       order by "propertyName", what, id`,
      [tx.organizationId, clientId],
    );
  },
};
