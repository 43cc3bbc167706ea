import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';

export interface WorkedProperty {
  readonly id: string;
  readonly firstWork: string;
  /** of the property's newest account up to the month: it has the price of water */
  readonly accountId: string | null;
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
  /** too much, of those open, a month; null where that of one of them is not known [L] */
  readonly litres: number | null;
  /** too little, of those open, a month; null where that of one of them is not known [L] */
  readonly lackingLitres: number | null;
  readonly money: number | null;
}

export interface CrewMonth {
  readonly name: string;
  readonly stops: number;
  readonly visits: number;
  readonly ordersDone: number;
}

/** A site whose account needs more than is allowed; whether that is sure, its account says. */
export interface SiteBeyond {
  readonly accountId: string;
  readonly propertyId: string;
  readonly name: string;
}

const LAST = `($2::date + interval '1 month')::date`;
const BEGAN = `opened_at >= $2::date and opened_at < ${LAST}`;
const ENDED = `state = 'resolved' and decided_at >= $2::date and decided_at < ${LAST}`;
const OPEN = `state in ('open', 'in work')`;
// Water that lacks is no water lost: it is told apart, and has no price. A zone's flow that grew loses water; one that fell lacks it.
const LACKS = `(kind in ('under-programmed', 'not delivering') or (kind = 'zone flow changed' and not coalesce((says->'details'->>'change')::float8 > 0, false)))`;
// What these say has no amount: their litres, where they have any, are neither lost nor lacking.
const HAS_AMOUNT = `kind not in ('flow to be tested', 'breaks a rule', 'doubtful reading', 'stale')`;
// One that is not known leaves the sum unknown; of none the sum is nothing.
const sumOfOpen = (column: 'litres' | 'money', which: string, name: string): string =>
  `case when count(*) filter (where ${OPEN} and ${HAS_AMOUNT} and ${which} and ${column} is null) = 0 then coalesce(sum(${column}) filter (where ${OPEN} and ${HAS_AMOUNT} and ${which}), 0)::float8 end as "${name}"`;

/** All SQL of the company's month. */
export const ownersMonth = {
  /** Properties on which work that saves water was done up to a month, and the month of the first. */
  worked(tx: OrganizationTransaction, month: string): Promise<WorkedProperty[]> {
    return tx.query(
      `select property.id, to_char(min(work_order.done_at at time zone property.time_zone), 'YYYY-MM') as "firstWork",
          (select month_account.id from month_account where month_account.organization_id = $1 and month_account.property_id = property.id and meter_id is null and month <= $2::date order by month desc limit 1) as "accountId"
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
      `select kind, count(*) filter (where ${BEGAN})::int as opened, count(*) filter (where ${ENDED})::int as resolved, count(*) filter (where ${OPEN})::int as open,
          ${sumOfOpen('litres', `not ${LACKS}`, 'litres')}, ${sumOfOpen('litres', LACKS, 'lackingLitres')}, ${sumOfOpen('money', `not ${LACKS}`, 'money')}
        from finding where organization_id = $1 group by kind having count(*) filter (where ${OPEN} or (${BEGAN}) or (${ENDED})) > 0 order by money desc nulls last, kind`,
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

  /** Orders that were done in the month, on a route or off it. */
  async ordersDone(tx: OrganizationTransaction, month: string): Promise<number> {
    const [row] = await tx.query<{ count: number }>(
      `select count(*)::int as count from work_order join property on property.organization_id = work_order.organization_id and property.id = work_order.property_id
        where work_order.organization_id = $1 and work_order.state = 'done' and work_order.retired_at is null
          and work_order.done_at at time zone property.time_zone >= $2::date and work_order.done_at at time zone property.time_zone < ${LAST}`,
      [tx.organizationId, `${month}-01`],
    );
    return row!.count;
  },

  /** Sites that need more than is allowed, those with the most beyond it first. */
  beyondAllowance(tx: OrganizationTransaction, month: string): Promise<SiteBeyond[]> {
    return tx.query(
      `select month_account.id as "accountId", property.id as "propertyId", property.name
        from month_account join property on property.organization_id = month_account.organization_id and property.id = month_account.property_id
        where month_account.organization_id = $1 and month = $2::date and meter_id is null and property.retired_at is null and needed_l > allowed_l
        order by needed_l - allowed_l desc, property.id`,
      [tx.organizationId, `${month}-01`],
    );
  },
};
