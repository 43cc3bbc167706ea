import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import type { Came, ItemOrder } from './plan-item.js';

/** A stop of some days, as planning reads it. */
export interface MaterialStop {
  readonly id: string;
  readonly propertyId: string;
  readonly crewId: string;
  readonly day: string;
  readonly position: number;
  readonly locked: boolean;
  readonly visited: boolean;
  /** when the crew came and left, on the organization's clock; null where nobody came */
  readonly came: Came | null;
  readonly orders: readonly ItemOrder[];
}

/** A property with its visit terms and the day on which somebody was last there, by a visit or a crew's reading, where there are any. */
export interface MaterialProperty {
  readonly id: string;
  readonly latitude: number | null;
  readonly longitude: number | null;
  readonly everyDays: number | null;
  readonly visitMinutes: number | null;
  readonly skills: readonly string[] | null;
  readonly hours: readonly never[] | null;
  readonly lastVisit: string | null;
}

/** Work of a property that nobody has a day for; all of it may be done from one day on, null: at once. */
interface OpenOrders {
  readonly propertyId: string;
  readonly notBefore: string | null;
  readonly orders: readonly ItemOrder[];
}

const ORDER = `jsonb_build_object('id', work.id, 'version', work.version, 'kind', work.kind, 'state', work.state, 'minutes', work.estimate_minutes, 'notBefore', work.not_before, 'dueOn', work.due_on, 'skills', work.skills)`;

/** Minutes since midnight on the organization's clock. */
const MINUTE = (at: string): string => `extract(epoch from (${at} at time zone min(organization.time_zone))::time) / 60`;

const STOPS = `
  select stop.id, stop.property_id as "propertyId", route.crew_id as "crewId", route.day::text as day, stop.position, stop.locked,
         exists (select from visit where visit.organization_id = stop.organization_id and visit.stop_id = stop.id and visit.withdrawn_at is null) as visited,
         (select jsonb_build_object('fromMinute', ${MINUTE('min(visit.arrived_at)')}, 'untilMinute', case when bool_and(visit.closed_at is not null) then ${MINUTE('max(visit.closed_at)')} end)
            from visit join organization on organization.id = visit.organization_id
           where visit.organization_id = stop.organization_id and visit.stop_id = stop.id and visit.withdrawn_at is null having count(*) > 0) as came,
         coalesce((select jsonb_agg(${ORDER} order by work.created_at, work.id) from work_order work
           where work.organization_id = stop.organization_id and work.stop_id = stop.id and work.retired_at is null and work.state in ('given out', 'done')), '[]'::jsonb) as orders
    from stop
    join route on route.organization_id = stop.organization_id and route.id = stop.route_id`;

const IN_ORDER = 'order by route.day, route.crew_id, stop.position, stop.id';

/** All SQL that gathers what a month is planned from. */
export const material = {
  /** Stops in use of the days from and until, both included. */
  stops(tx: OrganizationTransaction, from: string, until: string): Promise<MaterialStop[]> {
    return tx.query(`${STOPS} where stop.organization_id = $1 and stop.retired_at is null and route.day between $2 and $3 ${IN_ORDER}`, [
      tx.organizationId,
      from,
      until,
    ]);
  },

  /** Stops of the days before one at which given work is still to be done, however long ago, whether somebody came or not. */
  missed(tx: OrganizationTransaction, before: string): Promise<MaterialStop[]> {
    return tx.query(
      `${STOPS}
         join property on property.organization_id = stop.organization_id and property.id = stop.property_id and property.retired_at is null
        where stop.organization_id = $1 and stop.retired_at is null and route.day < $2
          and exists (select from work_order work where work.organization_id = stop.organization_id and work.stop_id = stop.id and work.retired_at is null and work.state = 'given out')
        ${IN_ORDER}`,
      [tx.organizationId, before],
    );
  },

  /** Work that nobody has a day for, by property, and apart where it must wait for a day after the one from which is planned. */
  openOrders(tx: OrganizationTransaction, from: string): Promise<readonly OpenOrders[]> {
    return tx.query(
      `select work.property_id as "propertyId", case when work.not_before > $2 then work.not_before end::text as "notBefore",
              jsonb_agg(${ORDER} order by work.created_at, work.id) as orders
         from work_order work
         join property on property.organization_id = work.organization_id and property.id = work.property_id and property.retired_at is null
        where work.organization_id = $1 and work.retired_at is null and work.state = 'open'
        group by 1, 2 order by 1, 2 nulls first`,
      [tx.organizationId, from],
    );
  },

  /** Properties that are named, and those in use that have a visit interval. */
  properties(tx: OrganizationTransaction, ids: readonly string[]): Promise<MaterialProperty[]> {
    return tx.query(
      `select property.id, property.latitude, property.longitude, terms.every_days as "everyDays", terms.visit_minutes as "visitMinutes", terms.skills, terms.hours,
              greatest(
                (select max(visit.arrived_at at time zone property.time_zone)::date from visit where visit.organization_id = property.organization_id and visit.property_id = property.id and visit.withdrawn_at is null),
                (select max(reading.read_at at time zone property.time_zone)::date from reading
                   join meter on meter.organization_id = reading.organization_id and meter.id = reading.meter_id
                  where meter.organization_id = property.organization_id and meter.property_id = property.id and reading.source = 'crew')
              )::text as "lastVisit"
         from property
         left join visit_terms terms on terms.organization_id = property.organization_id and terms.property_id = property.id
        where property.organization_id = $1 and (property.id = any($2::uuid[]) or (terms.every_days is not null and property.retired_at is null))
        order by property.id`,
      [tx.organizationId, ids],
    );
  },

  /** Closed visits of the half year before a day: what was expected of the work that was done there, and how long it took. */
  timedVisits(
    tx: OrganizationTransaction,
    before: string,
  ): Promise<{ readonly crewId: string; readonly estimateMinutes: number; readonly tookMinutes: number }[]> {
    return tx.query(
      `select visit.crew_id as "crewId", sum(work.estimate_minutes) as "estimateMinutes", extract(epoch from visit.closed_at - visit.arrived_at)::float8 / 60 as "tookMinutes"
         from visit
         join work_order work on work.organization_id = visit.organization_id and work.stop_id = visit.stop_id and work.retired_at is null and work.state = 'done'
        where visit.organization_id = $1 and visit.crew_id is not null and visit.closed_at is not null
          and visit.arrived_at between $2::date - interval '6 months' and $2::date + interval '1 day'
        group by visit.id, visit.crew_id, visit.arrived_at, visit.closed_at`,
      [tx.organizationId, before],
    );
  },
};
