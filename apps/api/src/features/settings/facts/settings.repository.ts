import { Any } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { grouped } from '../../../platform/graphql/loader.js';
import { SettingsRow } from './settings.entity.js';

/** Settings to be kept. */
export type NewSettings = Omit<SettingsRow, 'organizationId' | 'id' | 'personId' | 'recordedAt'>;

/** What a controller is set to now, and what it is planned to be set to. */
export interface PresentAndPlanned {
  readonly present: SettingsRow | null;
  readonly planned: SettingsRow | null;
}

const NEW = `insert into settings (organization_id, controller_id, effective_at, record, state, programs, device_record_id, typed, person_id)
select $1, new.*, $3::uuid from json_to_recordset($2) as new ("controllerId" uuid, "effectiveAt" timestamptz, record text, state text, programs jsonb, "deviceRecordId" uuid, typed jsonb)
order by new."controllerId", new."effectiveAt", new.record`;

const INSERT = `${NEW} on conflict do nothing returning id`;

// xmax is 0 in a row that was inserted now, not updated.
const PUT = `${NEW} on conflict on constraint settings_once do update set state = excluded.state, programs = excluded.programs, typed = excluded.typed
where (settings.state, settings.programs, settings.typed) is distinct from (excluded.state, excluded.programs, excluded.typed)
returning settings.xmax = 0 as created`;

const NEWEST = `select newest.id from unnest($2::uuid[]) as asked (id) cross join lateral (
  select id from settings where organization_id = $1 and controller_id = asked.id order by effective_at desc, record desc limit $3) as newest`;

// Of the two found and left at one time, the one left stands: its word comes later in the alphabet.
// A plan for a later day gives way to one that is to be entered now: what was given out today is what the phone shows.
const PRESENT_AND_PLANNED = `select asked.id as "controllerId", present.id as present, planned.id as planned from unnest($2::uuid[]) as asked (id)
left join lateral (select id, effective_at from settings where organization_id = $1 and controller_id = asked.id and record in ('found', 'left') and effective_at <= $3 order by effective_at desc, record desc limit 1) as present on true
left join lateral (select id from settings where organization_id = $1 and controller_id = asked.id and record = 'planned' and (present.effective_at is null or effective_at >= present.effective_at) order by effective_at <= $3 desc, effective_at desc limit 1) as planned on true`;

interface Chosen {
  readonly controllerId: string;
  readonly present: string | null;
  readonly planned: string | null;
}

/** All SQL of settings. */
export const settingsFacts = {
  ofDeviceRecord(tx: OrganizationTransaction, deviceRecordId: string): Promise<SettingsRow | null> {
    return tx.of(SettingsRow).findOneBy({ organizationId: tx.organizationId, deviceRecordId });
  },

  ofIds(tx: OrganizationTransaction, ids: readonly string[]): Promise<SettingsRow[]> {
    return tx.of(SettingsRow).findBy({ organizationId: tx.organizationId, id: Any([...ids]) });
  },

  at(tx: OrganizationTransaction, place: Pick<SettingsRow, 'controllerId' | 'effectiveAt' | 'record'>): Promise<SettingsRow | null> {
    const { controllerId, effectiveAt, record } = place;
    return tx.of(SettingsRow).findOneBy({ organizationId: tx.organizationId, controllerId, effectiveAt, record });
  },

  /** Each controller's newest facts of every record, newest first. */
  async newest(tx: OrganizationTransaction, controllerIds: readonly string[], most: number): Promise<Map<string, SettingsRow[]>> {
    const found = await tx.query<{ id: string }>(NEWEST, [tx.organizationId, controllerIds, most]);
    const rows = await settingsFacts.ofIds(
      tx,
      found.map(({ id }) => id),
    );
    const place = new Map(found.map(({ id }, at) => [id, at]));
    return grouped(
      rows.sort((a, b) => place.get(a.id)! - place.get(b.id)!),
      (row) => row.controllerId,
    );
  },

  /** What stands at an instant, and the last plan that is not older. */
  async presentAndPlanned(
    tx: OrganizationTransaction,
    controllerIds: readonly string[],
    now: Date,
  ): Promise<Map<string, PresentAndPlanned>> {
    const chosen = await tx.query<Chosen>(PRESENT_AND_PLANNED, [tx.organizationId, controllerIds, now]);
    const ids = chosen.flatMap(({ present, planned }) => [present, planned]).filter((id) => id !== null);
    const rows = new Map((await settingsFacts.ofIds(tx, ids)).map((row) => [row.id, row]));
    const row = (id: string | null): SettingsRow | null => (id === null ? null : (rows.get(id) ?? null));
    return new Map(chosen.map(({ controllerId, present, planned }) => [controllerId, { present: row(present), planned: row(planned) }]));
  },

  /** Keeps a fact; its id, or null when its name or its place is taken. */
  async insert(tx: OrganizationTransaction, fact: NewSettings): Promise<string | null> {
    const [kept] = await tx.query<{ id: string }>(INSERT, [tx.organizationId, JSON.stringify([fact]), tx.actor.personId]);
    return kept?.id ?? null;
  },

  /** Keeps facts by controller, time and record: how many are new, and how many say something else than before. */
  async put(tx: OrganizationTransaction, facts: readonly NewSettings[]): Promise<{ created: number; changed: number }> {
    const kept = await tx.query<{ created: boolean }>(PUT, [tx.organizationId, JSON.stringify(facts), tx.actor.personId]);
    const created = kept.filter((row) => row.created).length;
    return { created, changed: kept.length - created };
  },
};
