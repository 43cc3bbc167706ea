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

const COLUMNS = `meter_id as "meterId", day::text, day_start as "dayStart", start_seconds as "startSeconds", length_seconds as "lengthSeconds", volumes, unit, total_l as "totalL", least_l_per_min as "leastLPerMin"`;

const OF_DAYS = `select ${COLUMNS} from usage_day where organization_id = $1 and (meter_id, day) in (select * from unnest($2::uuid[], $3::date[]))`;

const BETWEEN = `select asked.key, found.* from unnest($2::integer[], $3::uuid[], $4::date[], $5::date[]) as asked (key, meter_id, from_day, until_day)
cross join lateral (select ${COLUMNS} from usage_day where organization_id = $1 and meter_id = asked.meter_id and day between asked.from_day and asked.until_day) as found order by found.day`;

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

  async put(tx: OrganizationTransaction, days: readonly Kept[]): Promise<void> {
    for (let at = 0; at < days.length; at += DAYS_AT_ONCE)
      await tx.query(PUT, [tx.organizationId, JSON.stringify(days.slice(at, at + DAYS_AT_ONCE))]);
  },
};
