import { Float, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { Temporal } from 'temporal-polyfill';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { DateScalar } from '../../../platform/graphql/scalars.js';
import { Tx } from '../../../platform/identity/tx.js';
import { findingOfId } from '../../findings/finding.loader.js';
import { Finding, showFinding } from '../../findings/finding.type.js';
import { propertyOfId } from '../../portfolio/properties/property.loader.js';
import { Property, showProperty } from '../../portfolio/properties/property.type.js';
import { settingsOfId } from '../../settings/facts/settings.loader.js';
import { Settings, showSettings } from '../../settings/facts/settings.type.js';
import { crewOfId } from '../crews/crew.loader.js';
import { Crew, showCrew } from '../crews/crew.type.js';
import type { RouteRow } from '../routes/route.entity.js';
import { routeOfId } from '../routes/route.loader.js';
import { stopOfId } from '../routes/stop.loader.js';
import { notToExceedOfProperty } from './not-to-exceed.loader.js';
import { overtakingOrder } from './lists/overtaking-order.loader.js';
import { OvertakingOrder, WorkOrder } from './work-order.type.js';

/** What stands around a work order. */
@Resolver(() => WorkOrder)
export class WorkOrderFieldResolver {
  @ResolveField(() => Property)
  async property(@Tx() tx: OrganizationTransaction, @Parent() order: WorkOrder): Promise<Property> {
    return showProperty((await propertyOfId.of(tx).load(order.propertyId))!);
  }

  @ResolveField(() => Finding, { nullable: true })
  async finding(@Tx() tx: OrganizationTransaction, @Parent() order: WorkOrder): Promise<Finding | null> {
    const row = order.findingId ? await findingOfId.of(tx).load(order.findingId) : null;
    return row && showFinding(row);
  }

  @ResolveField(() => Float, { nullable: true })
  notToExceed(@Tx() tx: OrganizationTransaction, @Parent() order: WorkOrder): Promise<number | null> {
    return notToExceedOfProperty.of(tx).load(order.propertyId);
  }

  @ResolveField(() => Crew, { nullable: true })
  async crew(@Tx() tx: OrganizationTransaction, @Parent() order: WorkOrder): Promise<Crew | null> {
    const route = await routeOf(tx, order);
    const row = route && (await crewOfId.of(tx).load(route.crewId));
    return row && showCrew(row);
  }

  @ResolveField(() => Settings, { nullable: true })
  async plannedSettings(@Tx() tx: OrganizationTransaction, @Parent() order: WorkOrder): Promise<Settings | null> {
    const row = order.plannedSettingsId ? await settingsOfId.of(tx).load(order.plannedSettingsId) : null;
    return row && showSettings(row);
  }

  /** the order whose newer plan is to be entered in place of this one's, or was entered already; null where its plan is the one to enter */
  @ResolveField(() => OvertakingOrder, { nullable: true })
  async overtakenBy(@Tx() tx: OrganizationTransaction, @Parent() order: WorkOrder): Promise<OvertakingOrder | null> {
    const by = order.plannedSettingsId ? await overtakingOrder.of(tx).load(order.id) : null;
    return by && Object.assign(new OvertakingOrder(), by);
  }

  /** the local day on which a controller waters again after the rain pause that is to be set; null for every other work */
  @ResolveField(() => DateScalar, { nullable: true })
  async waterAgainOn(@Tx() tx: OrganizationTransaction, @Parent() order: WorkOrder): Promise<string | null> {
    if (!order.pauseUntil) return null;
    const { timeZone } = (await propertyOfId.of(tx).load(order.propertyId))!;
    return Temporal.Instant.fromEpochMilliseconds(order.pauseUntil.getTime()).toZonedDateTimeISO(timeZone).toPlainDate().toString();
  }

  @ResolveField(() => DateScalar, { nullable: true })
  async day(@Tx() tx: OrganizationTransaction, @Parent() order: WorkOrder): Promise<string | null> {
    return (await routeOf(tx, order))?.day ?? null;
  }
}

async function routeOf(tx: OrganizationTransaction, order: WorkOrder): Promise<RouteRow | null> {
  const stop = order.stopId ? await stopOfId.of(tx).load(order.stopId) : null;
  return stop && routeOfId.of(tx).load(stop.routeId);
}
