import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';

/**
 * Whether a record of a property belongs to a visit there: who recorded it had come to that visit last. Of who has not come at all it belongs
 * where they are of the crew; what others read or set there later, at a visit of their own, is theirs.
 */
const isOfVisit = (personId: string, at: string): string => `${at} >= visit.arrived_at and coalesce(
    (select arrival.visit_id = visit.id from arrival
       join visit other on other.organization_id = arrival.organization_id and other.id = arrival.visit_id and other.property_id = visit.property_id
      where arrival.organization_id = visit.organization_id and arrival.person_id = ${personId} and arrival.arrived_at <= ${at}
      order by arrival.arrived_at desc, arrival.id limit 1),
    exists (select from crew_member
       join member on member.organization_id = crew_member.organization_id and member.id = crew_member.member_id
      where crew_member.organization_id = visit.organization_id and crew_member.crew_id = visit.crew_id and member.person_id = ${personId}))`;

/** Who recorded what at a visit: its notes, photos and tests, and what its crew read, set and ended there since it came. */
const WORK = `
  select person_id from zone_note where organization_id = $1 and visit_id = $2
  union all select person_id from photo where organization_id = $1 and visit_id = $2
  union all select person_id from zone_test where organization_id = $1 and visit_id = $2
  union all select reading.person_id from visit
    join meter on meter.organization_id = visit.organization_id and meter.property_id = visit.property_id
    join reading on reading.organization_id = meter.organization_id and reading.meter_id = meter.id and reading.source = 'crew' and ${isOfVisit('reading.person_id', 'reading.read_at')}
   where visit.organization_id = $1 and visit.id = $2
  union all select settings.person_id from visit
    join controller on controller.organization_id = visit.organization_id and controller.property_id = visit.property_id
    join settings on settings.organization_id = controller.organization_id and settings.controller_id = controller.id and settings.record in ('found', 'left') and ${isOfVisit('settings.person_id', 'settings.effective_at')}
   where visit.organization_id = $1 and visit.id = $2
  union all select null::uuid from visit
    join work_order on work_order.organization_id = visit.organization_id and work_order.stop_id = visit.stop_id and work_order.retired_at is null and work_order.done_at >= visit.arrived_at
   where visit.organization_id = $1 and visit.id = $2`;

/** All SQL of what was done at a visit. */
export const workOfVisit = {
  /** Whether a person recorded something there. */
  async isOf(tx: OrganizationTransaction, visitId: string, personId: string): Promise<boolean> {
    const [row] = await tx.query<{ found: boolean }>(`select exists (select from (${WORK}) work where person_id = $3) as found`, [
      tx.organizationId,
      visitId,
      personId,
    ]);
    return row!.found;
  },

  /** Whether anybody recorded something there. */
  async isThere(tx: OrganizationTransaction, visitId: string): Promise<boolean> {
    const [row] = await tx.query<{ found: boolean }>(`select exists (select from (${WORK}) work) as found`, [tx.organizationId, visitId]);
    return row!.found;
  },
};
