import { platformProblems } from '../../platform/problems/platform.problems.js';
import type { OrganizationTransaction } from '../../platform/database/organization-transaction.js';

/** One property of the portfolio in one month, with what ranks it. */
export interface PortfolioLine {
  readonly propertyId: string;
  readonly name: string;
  readonly accountId: string | null;
  readonly aboveNeedL: number | null;
  readonly aboveNeedMoney: number | null;
  readonly overL: number | null;
  readonly underL: number | null;
  readonly unexplainedL: number | null;
  /** metered and needed are both known */
  readonly counted: boolean;
  /** the meter passed more, or less, than needed beyond what can be measured */
  readonly sure: 'more' | 'less' | null;
  readonly topFindingId: string | null;
  readonly findingCount: number;
  readonly orderId: string | null;
}

/** What the portfolio may be narrowed to. */
export interface PortfolioNarrowing {
  readonly text?: string | null;
  readonly kind?: string | null;
  readonly reason?: string | null;
  readonly who?: string | null;
}

export type PortfolioOrder = 'money' | 'volume' | 'name';

const ORDERS: Readonly<Record<PortfolioOrder, string>> = {
  money: `(above_need_money is null), above_need_money desc, (above_need_l is null), above_need_l desc, name`,
  volume: `(above_need_l is null), above_need_l desc, name`,
  name: 'name',
};

/** The reasons by which the list can be narrowed, each a condition on a line. */
const REASONS: Readonly<Record<string, string>> = {
  settings: `'over-programmed' = any(kinds)`,
  unexplained: `'unexplained use' = any(kinds)`,
  'too little': `(under_l > 0 and 'under-programmed' = any(kinds))`,
  'not counted': 'not counted',
};

/** The condition of a reason; a word that is none is refused. */
function reasonOf(word: string): string {
  if (!Object.hasOwn(REASONS, word))
    throw platformProblems.valueRefused({ field: 'reason', found: word, expected: `one of ${Object.keys(REASONS).join(', ')}` });
  return REASONS[word]!;
}

const LINES = `
  select p.id as property_id, p.name, c.name as client, p.address, p.city, a.id as account_id, a.above_need_l, a.above_need_money, a.over_l, a.under_l,
    a.metered_l - a.programmed_l as unexplained_l, (a.metered_l is not null and a.needed_l is not null) as counted,
    case when a.above_need_l > $3 * a.above_need_sd_l then 'more' when a.above_need_l < -$3 * a.above_need_sd_l then 'less' end as sure,
    f.top_finding_id, coalesce(f.finding_count, 0)::int as finding_count, coalesce(f.kinds, '{}') as kinds, w.order_id, w.crew_id
  from property p
  join client c on c.organization_id = p.organization_id and c.id = p.client_id
  left join month_account a on a.organization_id = p.organization_id and a.property_id = p.id and a.month = $2::date and a.meter_id is null
  left join lateral (
    select (array_agg(finding.id order by finding.money desc nulls last, finding.litres desc nulls last))[1] as top_finding_id, count(*) as finding_count, array_agg(finding.kind) as kinds
    from finding where finding.organization_id = p.organization_id and finding.property_id = p.id and finding.state in ('open', 'in work')
  ) f on true
  left join lateral (
    select work_order.id as order_id, route.crew_id from work_order
    left join stop on stop.organization_id = work_order.organization_id and stop.id = work_order.stop_id
    left join route on route.organization_id = stop.organization_id and route.id = stop.route_id
    where work_order.organization_id = p.organization_id and work_order.property_id = p.id and work_order.state in ('waiting for approval', 'open', 'given out')
    order by (work_order.state = 'given out') desc, route.day, work_order.created_at limit 1
  ) w on true
  where p.organization_id = $1 and p.retired_at is null`;

/** The narrowing as SQL; its values become parameters. */
const condition = (narrowing: PortfolioNarrowing, parameters: unknown[]): string => {
  const parts = ['true'];
  const bind = (value: unknown): string => `$${parameters.push(value)}`;
  if (narrowing.text?.trim())
    parts.push(
      `(name || ' ' || client || ' ' || coalesce(address, '') || ' ' || coalesce(city, '')) ilike ${bind(`%${narrowing.text.trim().replace(/[\\%_]/g, '\\$&')}%`)}`,
    );
  if (narrowing.kind) parts.push(`${bind(narrowing.kind)} = any(kinds)`);
  const reason = narrowing.reason && reasonOf(narrowing.reason);
  if (reason) parts.push(reason);
  if (narrowing.who === 'nobody') parts.push('order_id is null and finding_count > 0');
  else if (narrowing.who) parts.push(`crew_id = ${bind(narrowing.who)}`);
  return parts.join(' and ');
};

/** The portfolio page's questions. */
export const portfolio = {
  /** All lines of a month that fit, ranked. */
  async lines(
    tx: OrganizationTransaction,
    month: string,
    narrowing: PortfolioNarrowing,
    how: { order: PortfolioOrder; deviate: number },
  ): Promise<PortfolioLine[]> {
    const parameters: unknown[] = [tx.organizationId, `${month}-01`, how.deviate];
    const where = condition(narrowing, parameters);
    return tx.query<PortfolioLine>(
      `with lines as (${LINES}) select property_id as "propertyId", name, account_id as "accountId", above_need_l as "aboveNeedL", above_need_money as "aboveNeedMoney", over_l as "overL", under_l as "underL", unexplained_l as "unexplainedL", counted, sure, top_finding_id as "topFindingId", finding_count as "findingCount", order_id as "orderId" from lines where ${where} order by ${ORDERS[how.order]}`,
      parameters,
    );
  },

  /** The newest month in which any property's meter is known; else the newest with an account. */
  async newestMonth(tx: OrganizationTransaction): Promise<string | null> {
    const [row] = await tx.query<{ month: string | null }>(
      `select to_char(coalesce(max(month) filter (where metered_l is not null and needed_l is not null), max(month)), 'YYYY-MM') as month from month_account where organization_id = $1 and meter_id is null`,
      [tx.organizationId],
    );
    return row?.month ?? null;
  },

  /** The last day that any account of a month covers. */
  async through(tx: OrganizationTransaction, month: string): Promise<string | null> {
    const [row] = await tx.query<{ through: string | null }>(
      'select max(through_on)::text as through from month_account where organization_id = $1 and month = $2::date and meter_id is null',
      [tx.organizationId, `${month}-01`],
    );
    return row?.through ?? null;
  },

  /** The counts of the monthly rhythm: what people decided of findings of that month, what is still open that began by its end, and what was done in it. */
  async board(tx: OrganizationTransaction, month: string): Promise<Record<string, number>> {
    const [row] = await tx.query<Record<string, number>>(
      `select (select count(*) from property where organization_id = $1 and retired_at is null)::int as properties,
        (select count(*) from month_account where organization_id = $1 and month = $2::date and meter_id is null and metered_l is not null)::int as "readingsIn",
        (select count(*) from month_account where organization_id = $1 and month = $2::date and meter_id is null and needed_l is not null)::int as "accountsComputed",
        (select count(*) from finding where organization_id = $1 and state = 'open' and coalesce(from_on, until_on, '-infinity') < $2::date + interval '1 month')::int as "findingsOpen",
        (select count(*) from finding where organization_id = $1 and state <> 'open' and decided_by is not null and until_on >= $2::date and coalesce(from_on, until_on) < $2::date + interval '1 month')::int as "findingsDecided",
        (select count(*) from work_order where organization_id = $1 and state = 'given out')::int as "workGivenOut",
        (select count(*) from work_order join organization on organization.id = work_order.organization_id where organization_id = $1 and state = 'done' and date_trunc('month', done_at at time zone organization.time_zone) = $2::date)::int as "workDone",
        (select count(*) from work_order where organization_id = $1 and state = 'waiting for approval')::int as "workWaitingForApproval"`,
      [tx.organizationId, `${month}-01`],
    );
    return row!;
  },
};
