import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import type { UsageDayRow } from './usage-day.entity.js';

/** A meter and a local day: the name of a row. */
export interface MeterDay {
  readonly meterId: string;
  readonly day: string;
}

/** A meter and a stretch of local days, both ends included. */
export interface MeterDays {
  readonly meterId: string;
  readonly from: string;
  readonly until: string;
}

/** What ran through all meters of a property on a local day; null where it is not known. */
export interface PropertyDay {
  readonly propertyId: string;
  readonly day: string;
  readonly usedL: number | null;
}

const COLUMNS = `meter_id as "meterId", day::text, day_start as "dayStart", start_seconds as "startSeconds", length_seconds as "lengthSeconds", volumes, unit, total_l as "totalL", least_l_per_min as "leastLPerMin"`;

const OF_DAYS = `select ${COLUMNS} from usage_day where organization_id = $1 and (meter_id, day) in (select * from unnest($2::uuid[], $3::date[]))`;

const BETWEEN = `select asked.key, found.* from unnest($2::integer[], $3::uuid[], $4::date[], $5::date[]) as asked (key, meter_id, from_day, until_day)
cross join lateral (select ${COLUMNS} from usage_day where organization_id = $1 and meter_id = asked.meter_id and day between asked.from_day and asked.until_day) as found order by found.day`;

/** Standing meters of a property all read by the hour, none of them with indoor use: what ran on each of the newest days, null where a meter's day is not whole. */
const BY_PROPERTY = `with fed as (
  select property_id, array_agg(id) as meters from meter where organization_id = $1 and retired_at is null and removed_on is null
  group by property_id having bool_and(kind = 'irrigation')),
newest as (
  select fed.property_id, meters, min(last.day) as day from fed cross join unnest(meters) as each (id)
  left join lateral (select max(day) as day from usage_day where organization_id = $1 and meter_id = each.id) as last on true
  group by fed.property_id, meters having count(*) = count(last.day) and min(last.day) >= $2::date)
select newest.property_id as "propertyId", on_day::date::text as day,
  case when count(used.least_l_per_min) = cardinality(meters) then sum(used.total_l) end as "usedL"
from newest cross join generate_series(newest.day - ($3::integer - 1), newest.day, interval '1 day') as on_day
left join usage_day used on used.organization_id = $1 and used.meter_id = any(meters) and used.day = on_day::date
group by newest.property_id, meters, on_day order by newest.property_id, on_day`;

const PUT = `insert into usage_day (organization_id, meter_id, day, day_start, start_seconds, length_seconds, volumes, unit, total_l, least_l_per_min)
select $1, new.* from json_to_recordset($2) as new ("meterId" uuid, day date, "dayStart" timestamptz, "startSeconds" integer[], "lengthSeconds" integer[], volumes double precision[], unit text, "totalL" double precision, "leastLPerMin" double precision)
order by new."meterId", new.day
on conflict (organization_id, meter_id, day) do update set day_start = excluded.day_start, start_seconds = excluded.start_seconds, length_seconds = excluded.length_seconds, volumes = excluded.volumes, unit = excluded.unit, total_l = excluded.total_l, least_l_per_min = excluded.least_l_per_min`;

/** A statement takes so many days at once: some megabytes. */
const DAYS_AT_ONCE = 5000;

type Kept = Omit<UsageDayRow, 'organizationId'>;

/** All SQL of usage days. */
export const usageDays = {
  /** The meters' time zones; the meters are held until the transaction ends, so that their days are merged one after the other. */
  async holdMeters(tx: OrganizationTransaction, meterIds: readonly string[]): Promise<Map<string, string>> {
    const rows = await tx.query<{ id: string; timeZone: string }>(
      `select meter.id, property.time_zone as "timeZone" from meter join property on property.organization_id = meter.organization_id and property.id = meter.property_id where meter.organization_id = $1 and meter.id = any($2::uuid[]) order by meter.id for no key update of meter`,
      [tx.organizationId, meterIds],
    );
    return new Map(rows.map((row) => [row.id, row.timeZone]));
  },

  ofDays(tx: OrganizationTransaction, days: readonly MeterDay[]): Promise<Kept[]> {
    return tx.query<Kept>(OF_DAYS, [tx.organizationId, days.map(({ meterId }) => meterId), days.map(({ day }) => day)]);
  },

  /** For each stretch its days, in order. */
  async between(tx: OrganizationTransaction, stretches: readonly MeterDays[]): Promise<Kept[][]> {
    const rows = await tx.query<Kept & { key: number }>(BETWEEN, [
      tx.organizationId,
      stretches.map((_, at) => at),
      stretches.map(({ meterId }) => meterId),
      stretches.map(({ from }) => from),
      stretches.map(({ until }) => until),
    ]);
    const found: Kept[][] = stretches.map(() => []);
    for (const row of rows) found[row.key]!.push(row);
    return found;
  },

  /** Their newest days, so many of each, the newest last; a property whose newest day is before `since` is not there. */
  newestOfProperties(tx: OrganizationTransaction, since: string, days: number): Promise<PropertyDay[]> {
    return tx.query<PropertyDay>(BY_PROPERTY, [tx.organizationId, since, days]);
  },

  async put(tx: OrganizationTransaction, days: readonly Kept[]): Promise<void> {
    for (let at = 0; at < days.length; at += DAYS_AT_ONCE)
      await tx.query(PUT, [tx.organizationId, JSON.stringify(days.slice(at, at + DAYS_AT_ONCE))]);
  },
};
