/** A finding as findings.csv has it, with the names that its sentence needs. */
export interface FindingAnswer {
  readonly property: string;
  readonly timeZone: string;
  readonly meter: string | null;
  readonly controller: string | null;
  readonly zones: readonly string[] | null;
  readonly kind: string;
  readonly from: string | null;
  readonly until: string | null;
  readonly litres: number | null;
  readonly money: number | null;
  readonly confidence: number | null;
  readonly state: string;
  readonly openedAt: Date;
  readonly says: { readonly code: string; readonly details: Readonly<Record<string, unknown>> };
}

// A finding of one zone names it itself; one of several has them among its evidence.
const ZONES = `(select array_agg(z.name order by z.name collate "C") from zone z where z.organization_id = t.organization_id
   and (z.id = t.zone_id or (t.zone_id is null and z.id::text in (select jsonb_array_elements_text(t.says -> 'details' -> 'zoneIds')))))`;

/** The findings of properties in use. */
export const FINDINGS = `select p.name as property, p.time_zone as "timeZone", m.name as meter, c.name as controller, ${ZONES} as zones, t.kind, t.from_on::text as "from", t.until_on::text as "until",
       t.litres, t.money, t.confidence, t.state, t.opened_at as "openedAt", t.says
  from finding t join property p on p.organization_id = t.organization_id and p.id = t.property_id and p.retired_at is null
  left join meter m on m.organization_id = t.organization_id and m.id = t.meter_id
  left join controller c on c.organization_id = t.organization_id and c.id = t.controller_id
 where t.organization_id = $1 order by p.name collate "C", t.kind collate "C", m.name collate "C" nulls first, c.name collate "C" nulls first, t.from_on, t.cause_key collate "C"`;
