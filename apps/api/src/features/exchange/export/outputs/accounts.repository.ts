/** A month account as accounts.csv has it, volumes in litres. */
export interface AccountAnswer {
  readonly property: string;
  readonly meter: string | null;
  readonly month: string;
  readonly allowed: number | null;
  readonly needed: number | null;
  readonly programmed: number | null;
  readonly metered: number | null;
  readonly allowedSd: number | null;
  readonly neededSd: number | null;
  readonly programmedSd: number | null;
  readonly meteredSd: number | null;
}

/** The accounts of properties in use: each month the property's own, then its meters'. */
export const ACCOUNTS = `select p.name as property, m.name as meter, to_char(t.month, 'YYYY-MM') as month, t.allowed_l as allowed, t.needed_l as needed, t.programmed_l as programmed, t.metered_l as metered,
       t.allowed_sd_l as "allowedSd", t.needed_sd_l as "neededSd", t.programmed_sd_l as "programmedSd", t.metered_sd_l as "meteredSd"
  from month_account t join property p on p.organization_id = t.organization_id and p.id = t.property_id and p.retired_at is null
  left join meter m on m.organization_id = t.organization_id and m.id = t.meter_id
 where t.organization_id = $1 order by p.name collate "C", t.month, m.name collate "C" nulls first`;
