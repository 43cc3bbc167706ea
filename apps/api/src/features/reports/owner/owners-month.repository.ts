import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';

export interface WorkedProperty {
  readonly id: string;
  readonly firstWork: string;
  readonly pricePerLitre: number | null;
}

export interface KnownAccount {
  readonly propertyId: string;
  readonly month: string;
  readonly days: number;
  readonly neededLitres: number | null;
  readonly meteredLitres: number | null;
}

export interface FindingsOfKind {
  readonly kind: string;
  readonly opened: number;
  readonly resolved: number;
  readonly open: number;
  readonly litres: number;
  readonly money: number;
}

export interface CrewMonth {
  readonly name: string;
  readonly stops: number;
  readonly visits: number;
  readonly ordersDone: number;
}

export interface UpgradeSite {
  readonly propertyId: string;
  readonly name: string;
  readonly litres: number;
  readonly money: number | null;
}

const LAST = `($2::date + interval '1 month')::date`;

/** All SQL of the company's month. */
export const ownersMonth = {
  /** Properties on which work that saves water was done up to a month, and the month of the first. */
  worked(tx: OrganizationTransaction, month: string): Promise<WorkedProperty[]> {
    return tx.query(
      `select property.id, to_char(min(work_order.done_at at time zone property.time_zone), 'YYYY-MM') as "firstWork",
          (select above_need_money / nullif(above_need_l, 0) from month_account where month_account.organization_id = $1 and month_account.property_id = property.id and meter_id is null and above_need_money is not null and month <= $2::date order by month desc limit 1) as "pricePerLitre"
        from work_order join property on property.organization_id = work_order.organization_id and property.id = work_order.property_id
        where work_order.organization_id = $1 and work_order.state = 'done' and work_order.kind in ('adjust', 'repair', 'upgrade') and property.retired_at is null and work_order.done_at < ${LAST}
        group by property.organization_id, property.id`,
      [tx.organizationId, `${month}-01`],
    );
  },

  /** Their accounts up to the month; those of a part of a month are not known. */
  accounts(tx: OrganizationTransaction, month: string, propertyIds: readonly string[]): Promise<KnownAccount[]> {
    return tx.query(
      `select property_id as "propertyId", to_char(month, 'YYYY-MM') as month, extract(day from month + interval '1 month - 1 day')::int as days,
          case when through_on = (month + interval '1 month - 1 day')::date then needed_l end as "neededLitres", case when through_on = (month + interval '1 month - 1 day')::date then metered_l end as "meteredLitres"
        from month_account where organization_id = $1 and meter_id is null and month <= $2::date and property_id = any($3::uuid[]) order by month`,
      [tx.organizationId, `${month}-01`, propertyIds],
    );
  },

  findings(tx: OrganizationTransaction, month: string): Promise<FindingsOfKind[]> {
    return tx.query(
      `select kind, count(*) filter (where opened_at >= $2::date and opened_at < ${LAST})::int as opened,
          count(*) filter (where state = 'resolved' and decided_at >= $2::date and decided_at < ${LAST})::int as resolved,
          count(*) filter (where state in ('open', 'in work'))::int as open,
          coalesce(sum(litres) filter (where state in ('open', 'in work')), 0)::float8 as litres, coalesce(sum(money) filter (where state in ('open', 'in work')), 0)::float8 as money
        from finding where organization_id = $1 group by kind having count(*) filter (where state in ('open', 'in work') or (opened_at >= $2::date and opened_at < ${LAST})) > 0 order by money desc, kind`,
      [tx.organizationId, `${month}-01`],
    );
  },

  crews(tx: OrganizationTransaction, month: string): Promise<CrewMonth[]> {
    return tx.query(
      `select crew.name, count(distinct stop.id)::int as stops, count(distinct visit.id)::int as visits, count(distinct work_order.id) filter (where work_order.state = 'done')::int as "ordersDone"
        from crew
        left join route on route.organization_id = crew.organization_id and route.crew_id = crew.id and route.retired_at is null and route.day >= $2::date and route.day < ${LAST}
        left join stop on stop.organization_id = route.organization_id and stop.route_id = route.id and stop.retired_at is null
        left join visit on visit.organization_id = stop.organization_id and visit.stop_id = stop.id and visit.closed_at is not null
        left join work_order on work_order.organization_id = stop.organization_id and work_order.stop_id = stop.id
        where crew.organization_id = $1 and crew.retired_at is null group by crew.id, crew.name order by crew.name`,
      [tx.organizationId, `${month}-01`],
    );
  },

  /** Sites that need more than is allowed with the settings right: no crew's visit mends that. */
  needUpgrade(tx: OrganizationTransaction, month: string): Promise<UpgradeSite[]> {
    return tx.query(
      `select property.id as "propertyId", property.name, needed_l - allowed_l as litres, (needed_l - allowed_l) * (above_need_money / nullif(above_need_l, 0)) as money
        from month_account join property on property.organization_id = month_account.organization_id and property.id = month_account.property_id
        where month_account.organization_id = $1 and month = $2::date and meter_id is null and property.retired_at is null and needed_l > allowed_l + 2 * coalesce(allowed_sd_l, 0)
        order by litres desc limit 20`,
      [tx.organizationId, `${month}-01`],
    );
  },
};
