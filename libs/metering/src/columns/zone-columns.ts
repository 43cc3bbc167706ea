import type { Quantity } from '@rillbook/units/quantity.js';
import type { AccountFacts, AccountZone } from '../account/account-input.js';
import { areaSd, uniformityEffect } from '../account/needed/needed-of-zone.js';
import { flowInputOf } from '../account/programmed-of-zone.js';
import { grossVolume } from '../volumes/gross-volume.js';
import type { AccountFrame } from './account-columns.js';
import { type EffectOrders, effectOrders } from './effect-orders.js';

/** What is the same in every month in which the zones are: factors as columns, in the order of the zones, and room to compute in. */
export interface ZoneColumns {
  readonly frame: AccountFrame;
  readonly zones: readonly AccountZone[];
  readonly litresPerMm: Float64Array;
  readonly areaSd: Float64Array;
  readonly uniformityEffect: Float64Array;
  readonly flowLPerMin: Float64Array;
  readonly flowSd: Float64Array;
  /** places of each controller's zones */
  readonly ofController: readonly Int32Array[];
  readonly orders: EffectOrders;
}

/**
 * The zones of a property as columns, where its account is of the usual kind: one meter that measures all zones, each of which stands on a
 * station of a controller and has a flow.
 *
 * @param of - Zones, controllers and meters of a month. [code]
 * @returns The columns; null where an account has to be computed zone by zone. [code]
 * @throws {DomainError} As `grossVolume`.
 */
export function zoneColumns(of: Pick<AccountFacts, 'zones' | 'controllers' | 'meters'>): ZoneColumns | null {
  const { zones, controllers, meters } = of;
  const [meter] = meters;
  if (!meter || meters.length > 1 || zones.length === 0) return null;
  const places = new Map(controllers.map(({ id }, place) => [id, place]));
  if (places.size < controllers.length) return null;
  if (!zones.every((zone) => isUsual(zone, meter.id) && places.has(zone.controllerId as string))) return null;
  const flows = zones.map(flowInputOf);
  const frame: AccountFrame = {
    meterId: meter.id,
    controllerIds: controllers.map(({ id }) => id),
    zones: zones.map((zone, at) => ({
      id: zone.id,
      controllerId: zone.controllerId as string,
      station: zone.station as number,
      isDerived: flows[at]?.isDerived === true,
      assumed: zone.assumed,
      establishedShare: zone.establishedShare ?? null,
    })),
  };
  return {
    frame,
    zones,
    litresPerMm: Float64Array.from(zones, (zone) => grossVolume(1 as Quantity<'mm'>, zone)),
    areaSd: Float64Array.from(zones, areaSd),
    uniformityEffect: Float64Array.from(zones, uniformityEffect),
    flowLPerMin: Float64Array.from(zones, (zone) => zone.flowLPerMin as number),
    flowSd: Float64Array.from(flows, ({ relativeSd }) => relativeSd),
    ofController: controllers.map(({ id }) => Int32Array.from(zones.flatMap((zone, at) => (zone.controllerId === id ? [at] : [])))),
    orders: effectOrders(
      frame.zones.map(({ isDerived }) => isDerived),
      controllers.map(() => -1),
    ),
  };
}

function isUsual(zone: AccountZone, meterId: string): boolean {
  const { areaM2, flowLPerMin: flow } = zone;
  if (zone.handWatered || zone.station === null || !(zone.meterId === null || zone.meterId === meterId)) return false;
  return areaM2 > 0 && Number.isFinite(areaM2) && flow !== null && flow >= 0 && Number.isFinite(flow);
}
