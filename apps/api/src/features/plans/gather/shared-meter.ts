import { type Sharer, type ShareOfSupply, shareOfSupply } from '@rillbook/irrigation/planning/layout/share-of-supply.js';
import type { WaterWindow } from '@rillbook/irrigation/planning/plan-input.js';
import type { WateringRule } from '@rillbook/irrigation/rules/watering-rule.js';
import type { ZoneNeed } from '../../accounts/needs/need-of-month.service.js';

/** A zone that a controller waters through a meter. */
export interface MeteredZone {
  readonly id: string;
  readonly controllerId: string | null;
  readonly station: number | null;
  readonly meterId: string | null;
  readonly unmetered: boolean;
}

interface LimitedMeter {
  readonly id: string;
  readonly maxLPerMin: number | null;
}

/** What of a property decides what one of its controllers may take. */
export interface PropertySupply {
  readonly zones: readonly MeteredZone[];
  readonly meters: readonly LimitedMeter[];
  readonly needs: ReadonlyMap<string, ZoneNeed>;
  readonly window: WaterWindow;
  readonly rules: readonly WateringRule[];
}

/** What a controller may take, and with whom it shares that. */
export interface SupplyOfController {
  readonly flowLimitLPerMin: number | null;
  readonly window: WaterWindow;
  /** null where it has its meters for itself, or nobody knows what they carry */
  readonly shared: { readonly by: ShareOfSupply['by']; readonly controllerIds: readonly string[] } | null;
}

/** What a controller may take of what its meters carry, beside all that water through the same ones. */
export function supplyOfController(controllerId: string, about: PropertySupply): SupplyOfController {
  const { meters, window } = about;
  const sharing = sharingMeters(controllerId, about);
  const limits = meters.flatMap(({ id, maxLPerMin }) => (sharing.meterIds.has(id) && maxLPerMin !== null ? [maxLPerMin] : []));
  const flowLimitLPerMin = limits.length ? Math.min(...limits) : null;
  const others = [...sharing.controllerIds].filter((id) => id !== controllerId).sort();
  if (flowLimitLPerMin === null || !others.length) return { flowLimitLPerMin, window, shared: null };
  const sharers = [controllerId, ...others].map((id) => sharerOf(id, about));
  const part = shareOfSupply(controllerId, sharers, { flowLimitLPerMin, window, isClosed: closedBy(about.rules) });
  return { flowLimitLPerMin: part.flowLimitLPerMin, window: part.window, shared: { by: part.by, controllerIds: others } };
}

/** Controllers and meters that hang together: who shares a meter with somebody who shares one with this controller belongs to them. */
function sharingMeters(controllerId: string, { zones, meters }: PropertySupply) {
  const controllerIds = new Set([controllerId]);
  const meterIds = new Set<string>();
  for (let size = -1; size !== controllerIds.size + meterIds.size; ) {
    size = controllerIds.size + meterIds.size;
    for (const zone of zones) {
      const own = metersOf(zone, meters);
      if (zone.controllerId === null || zone.station === null || !own.length) continue;
      if (!controllerIds.has(zone.controllerId) && !own.some((id) => meterIds.has(id))) continue;
      controllerIds.add(zone.controllerId);
      own.forEach((id) => meterIds.add(id));
    }
  }
  return { controllerIds, meterIds };
}

/** A zone that nobody has given a meter may run through any. */
const metersOf = ({ meterId, unmetered }: MeteredZone, meters: readonly LimitedMeter[]): readonly string[] =>
  unmetered ? [] : meterId === null ? meters.map(({ id }) => id) : [meterId];

function sharerOf(id: string, { zones, meters, needs }: PropertySupply): Sharer {
  const own = zones.filter((zone) => zone.controllerId === id && zone.station !== null && metersOf(zone, meters).length > 0);
  const known = own.flatMap((zone) => {
    const need = needs.get(zone.id);
    return need?.zone.flowLPerMin ? [{ ...need.zone, flow: need.zone.flowLPerMin }] : [];
  });
  if (known.length < own.length) return { id, largestFlowLPerMin: null, minutes: null };
  return {
    id,
    largestFlowLPerMin: Math.max(0, ...known.map(({ flow }) => flow)),
    // For a millimetre of reference ET, so that the parts are the same in every month.
    minutes: known.reduce((sum, { flow, areaM2, plantFactor, density, shade }) => sum + (areaM2 * plantFactor * density * shade) / flow, 0),
  };
}

const DAY = 1440;

const closedBy = (rules: readonly WateringRule[]) => {
  const blocked = rules.flatMap(({ blockedFrom, blockedUntil }) =>
    blockedFrom === null && blockedUntil === null ? [] : [{ from: blockedFrom ?? 0, until: blockedUntil ?? DAY }],
  );
  return (minute: number): boolean =>
    blocked.some(({ from, until }) => (until > from ? minute >= from && minute < until : minute >= from || minute < until));
};
