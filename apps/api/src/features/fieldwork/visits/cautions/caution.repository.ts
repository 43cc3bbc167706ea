import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import type { CautionFacts } from './caution.js';

const FACTS = `
  select stop.id as "stopId",
    exists (select from meter where meter.organization_id = stop.organization_id and meter.property_id = stop.property_id and meter.retired_at is null and (meter.removed_on is null or meter.removed_on > route.day) and meter.water = 'recycled') as "recycledWater",
    exists (select from controller where controller.organization_id = stop.organization_id and controller.property_id = stop.property_id and controller.retired_at is null) as controller,
    exists (select from backflow_assembly where backflow_assembly.organization_id = stop.organization_id and backflow_assembly.property_id = stop.property_id and backflow_assembly.retired_at is null) as "backflowAssembly",
    exists (select from work_order where work_order.organization_id = stop.organization_id and work_order.stop_id = stop.id and work_order.kind in ('repair', 'upgrade') and work_order.state <> 'done') as digging,
    (select max(pressure_kpa) from meter where meter.organization_id = stop.organization_id and meter.property_id = stop.property_id and meter.retired_at is null and (meter.removed_on is null or meter.removed_on > route.day)) as "pressureKpa",
    (select max(tmax_c) from weather_day where weather_day.organization_id = stop.organization_id and weather_day.station_id = property.weather_station_id and weather_day.day between route.day - 3 and route.day) as "tmaxC",
    coalesce(btrim(property.notes), '') <> '' as notes
  from stop
  join route on route.organization_id = stop.organization_id and route.id = stop.route_id
  join property on property.organization_id = stop.organization_id and property.id = stop.property_id
  where stop.organization_id = $1 and stop.id = any($2::uuid[])`;

/** What stands in other tables about the cautions of stops. */
export const cautionFacts = {
  async ofStops(tx: OrganizationTransaction, stopIds: readonly string[]): Promise<(CautionFacts & { stopId: string })[]> {
    return tx.query<CautionFacts & { stopId: string }>(FACTS, [tx.organizationId, stopIds]);
  },
};
