import { DomainError } from '@rillbook/units/domain-error.js';
import type { AccountMeter, AccountZone } from './account-input.js';
import type { ZoneScope } from './month-account.js';

/** A zone with where its water is counted. */
export interface ScopedZone {
  readonly zone: AccountZone;
  readonly scope: ZoneScope;
  readonly meterId: string | null;
}

/**
 * Where each zone's water is counted: by a meter, by none, by hand, or not assigned where a property has several meters (or none at all).
 *
 * @param zones - The property's zones. [code]
 * @param meters - The property's meters. [code]
 * @returns The zones with scope and meter, in the same order. [code]
 * @throws {DomainError} `ZONE_METER_UNKNOWN` when a zone names a meter that the property has not; `ZONE_AREA_OUT_OF_DOMAIN` when an area is
 * not above zero.
 */
export function assignScope(zones: readonly AccountZone[], meters: readonly AccountMeter[]): readonly ScopedZone[] {
  return zones.map((zone) => {
    if (!(zone.areaM2 > 0 && Number.isFinite(zone.areaM2)))
      throw new DomainError('ZONE_AREA_OUT_OF_DOMAIN', { zoneId: zone.id, areaM2: zone.areaM2 });
    const { scope, meterId } = scopeOf(zone, meters);
    return { zone, scope, meterId };
  });
}

function scopeOf(zone: AccountZone, meters: readonly AccountMeter[]): { readonly scope: ZoneScope; readonly meterId: string | null } {
  if (zone.handWatered) return { scope: 'hand', meterId: null };
  if (zone.meterId === 'none') return { scope: 'unmetered', meterId: null };
  const only = meters.length === 1 ? meters[0] : undefined;
  if (zone.meterId === null) return only ? { scope: 'metered', meterId: only.id } : { scope: 'unassigned', meterId: null };
  if (!meters.some(({ id }) => id === zone.meterId))
    throw new DomainError('ZONE_METER_UNKNOWN', { zoneId: zone.id, meterId: zone.meterId });
  return { scope: 'metered', meterId: zone.meterId };
}
