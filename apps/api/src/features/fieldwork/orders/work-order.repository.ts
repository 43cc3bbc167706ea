import { In, type SelectQueryBuilder } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { crewsInScope } from '../crews/crew-scope.js';
import { WorkOrderRow } from './work-order.entity.js';

/** What a list of work orders may be narrowed to. */
export interface WorkOrderFilter {
  readonly ids?: readonly string[] | null;
  readonly states?: readonly string[] | null;
  readonly crewId?: string | null;
  readonly propertyIds?: readonly string[] | null;
  readonly findingIds?: readonly string[] | null;
  readonly stopIds?: readonly string[] | null;
  /** also what was given out to the actor's crews before, whoever has it now */
  readonly alsoBefore?: boolean;
}

/** What on the property a work order is about. */
export interface OrderSubject {
  readonly controllerId: string | null;
  readonly meterId: string | null;
  readonly zoneId: string | null;
}

/** What of an order somebody may decide while a phone is away. */
export type ChangedPart = 'state' | 'stopId';

/** Who changed something, and when; nobody where the product did it by itself. */
export interface WhoChanged {
  readonly personId: string | null;
  readonly by: string | null;
  readonly at: Date;
}

const OF_CREWS =
  'exists (select from stop join route on route.organization_id = stop.organization_id and route.id = stop.route_id where stop.organization_id = work.organization_id and stop.id = work.stop_id and route.crew_id = any(:crews))';
const OF_NOBODY_ON_THEIR_PROPERTIES =
  'work.stop_id is null and exists (select from stop join route on route.organization_id = stop.organization_id and route.id = stop.route_id where stop.organization_id = work.organization_id and stop.property_id = work.property_id and stop.retired_at is null and route.crew_id = any(:crews))';

const ONCE_OF_CREWS =
  "exists (select from change join stop on stop.organization_id = change.organization_id and stop.id = (change.after ->> 'stopId')::uuid join route on route.organization_id = stop.organization_id and route.id = stop.route_id where change.organization_id = work.organization_id and change.thing_id = work.id and change.thing = 'work_order' and route.crew_id = any(:crews))";

/** The order that overtakes another by a newer plan of the same controller. */
export interface OvertakingOrder {
  readonly orderId: string;
  readonly plannedAt: Date;
  readonly state: string;
}

// What may be entered only later than the older order overtakes nothing: until then the older plan is right.
const OVERTAKEN = `select work.id, newer.id as "orderId", newer.effective_at as "plannedAt", newer.state
  from work_order work
  join settings plan on plan.organization_id = work.organization_id and plan.id = work.planned_settings_id
  join lateral (
    select other.id, other.state, of_other.effective_at from work_order other
      join settings of_other on of_other.organization_id = other.organization_id and of_other.id = other.planned_settings_id
     where other.organization_id = work.organization_id and of_other.controller_id = plan.controller_id
       and other.retired_at is null and other.state in ('open', 'given out', 'done')
       and (of_other.effective_at, of_other.recorded_at) > (plan.effective_at, plan.recorded_at)
       and coalesce(other.not_before, $3::date) <= greatest(coalesce(work.not_before, $3::date), $3::date)
     order by of_other.effective_at desc, of_other.recorded_at desc limit 1
  ) newer on true
 where work.organization_id = $1 and work.id = any($2::uuid[]) and work.state in ('waiting for approval', 'open', 'given out')`;

/** A crew sees what is given out to it; its lead also what nobody has yet on the properties where it goes. */
async function withinScope(tx: OrganizationTransaction, query: SelectQueryBuilder<WorkOrderRow>, alsoBefore = false): Promise<void> {
  const crews = await crewsInScope(tx);
  if (crews === null) return;
  const seen = [
    OF_CREWS,
    ...(tx.actor.role === 'crewLead' ? [`(${OF_NOBODY_ON_THEIR_PROPERTIES})`] : []),
    ...(alsoBefore ? [ONCE_OF_CREWS] : []),
  ];
  query.andWhere(`(${seen.join(' or ')})`, { crews });
}

/** All SQL of work orders. */
export const workOrders = {
  /** Those the actor sees, the newest first. */
  async seen(tx: OrganizationTransaction, filter: WorkOrderFilter): Promise<WorkOrderRow[]> {
    const query = tx
      .of(WorkOrderRow)
      .createQueryBuilder('work')
      .where('work.organizationId = :organization and work.retiredAt is null', { organization: tx.organizationId });
    await withinScope(tx, query, filter.alsoBefore);
    if (filter.ids) query.andWhere('work.id = any(:ids)', { ids: filter.ids.filter(isUuid) });
    if (filter.states) query.andWhere('work.state = any(:states)', { states: filter.states });
    if (filter.propertyIds) query.andWhere('work.propertyId = any(:properties)', { properties: filter.propertyIds.filter(isUuid) });
    if (filter.findingIds) query.andWhere('work.findingId = any(:findings)', { findings: filter.findingIds });
    if (filter.stopIds) query.andWhere('work.stopId = any(:stops)', { stops: filter.stopIds });
    if (filter.crewId) query.andWhere(OF_CREWS.replace(':crews', ':asked'), { asked: [filter.crewId].filter(isUuid) });
    return query.orderBy('work.createdAt', 'DESC').addOrderBy('work.id').getMany();
  },

  /** What each property's client lets be spent without asking. [money] */
  async notToExceed(tx: OrganizationTransaction, propertyIds: readonly string[]): Promise<Map<string, number | null>> {
    const rows = await tx.query<{ id: string; limit: number | null }>(
      'select property.id, client.not_to_exceed as limit from property join client on client.organization_id = property.organization_id and client.id = property.client_id where property.organization_id = $1 and property.id = any($2::uuid[])',
      [tx.organizationId, propertyIds],
    );
    return new Map(rows.map(({ id, limit }) => [id, limit]));
  },

  /** Which of the things named do not stand on the property. */
  async strangers(
    tx: OrganizationTransaction,
    propertyId: string,
    { controllerId, meterId, zoneId }: OrderSubject,
  ): Promise<(keyof OrderSubject)[]> {
    const rows = await tx.query<{ field: keyof OrderSubject }>(
      `select field from (values ('controllerId', $3::uuid), ('meterId', $4::uuid), ('zoneId', $5::uuid)) as named (field, id)
        where id is not null and not exists (
          select from (select organization_id, property_id, id from controller union all select organization_id, property_id, id from meter union all select organization_id, property_id, id from zone) as thing
           where thing.organization_id = $1 and thing.property_id = $2 and thing.id = named.id)`,
      [tx.organizationId, propertyId, controllerId, meterId, zoneId],
    );
    return rows.map(({ field }) => field);
  },

  /** Of orders as they were read: the day for which one is given out now, where that is another stop than it had then. By id and version. */
  async movedTo(
    tx: OrganizationTransaction,
    read: readonly { readonly id: string; readonly version: number }[],
  ): Promise<Map<string, string>> {
    const rows = await tx.query<{ id: string; version: number; day: string }>(
      `select read.id, read.version, route.day::text as day
         from unnest($2::uuid[], $3::integer[]) as read (id, version)
         join work_order work on work.organization_id = $1 and work.id = read.id and work.state = 'given out'
         join stop on stop.organization_id = $1 and stop.id = work.stop_id
         join route on route.organization_id = $1 and route.id = stop.route_id
         join lateral (
           select before ->> 'stopId' as stop_id from change
            where organization_id = $1 and thing = 'work_order' and thing_id = work.id and thing_version > read.version
              and after ->> 'stopId' is distinct from before ->> 'stopId'
            order by thing_version limit 1
         ) as was on was.stop_id is distinct from work.stop_id::text`,
      [tx.organizationId, read.map(({ id }) => id), read.map(({ version }) => version)],
    );
    return new Map(rows.map(({ id, version, day }) => [`${id} ${version}`, day]));
  },

  /** Who last changed one thing of each order, and when: its state, or where it is given out. */
  async changedBy(tx: OrganizationTransaction, part: ChangedPart, orderIds: readonly string[]): Promise<Map<string, WhoChanged>> {
    const rows = await tx.query<WhoChanged & { id: string }>(
      `select distinct on (change.thing_id) change.thing_id as id, change.person_id as "personId", person.name as by, change.at
         from change left join person on person.id = change.person_id
        where change.organization_id = $1 and change.thing = 'work_order' and change.thing_id = any($2::uuid[]) and change.after ? $3
        order by change.thing_id, change.thing_version desc`,
      [tx.organizationId, orderIds, part],
    );
    return new Map(rows.map(({ id, personId, by, at }) => [id, { personId, by, at }]));
  },

  /** Of orders that are still to be done: the one whose newer plan of the same controller is to be entered no later, or was entered already. */
  async overtaken(tx: OrganizationTransaction, ids: readonly string[], today: string): Promise<Map<string, OvertakingOrder>> {
    const rows = await tx.query<OvertakingOrder & { id: string }>(OVERTAKEN, [tx.organizationId, ids, today]);
    return new Map(rows.map(({ id, ...by }) => [id, by]));
  },

  /** Whether a finding has another work order that is not dropped. */
  hasOther(tx: OrganizationTransaction, findingId: string): Promise<boolean> {
    return tx
      .of(WorkOrderRow)
      .existsBy({ organizationId: tx.organizationId, findingId, state: In(['waiting for approval', 'open', 'given out', 'done']) });
  },
};
