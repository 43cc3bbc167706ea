import type { AccountZone } from '@rillbook/metering/account/account-input.js';
import type { MeterChain } from './meter-chains.js';
import type { ZoneFact } from './property-facts.js';
import { zoneInput } from './zone-input.js';

/** A zone whose meter was not there yet, or no longer, went unmetered in that month. */
function inMonth(zone: AccountZone, measuring: ReadonlySet<string>): AccountZone {
  if (zone.meterId === null || zone.meterId === 'none' || measuring.has(zone.meterId)) return zone;
  return { ...zone, meterId: measuring.size ? 'none' : null };
}

/** Zones as they were in a month: the same object for months in which neither their plants nor the meters differ. */
export function zonesByMonth(
  facts: readonly ZoneFact[],
  chains: readonly MeterChain[],
): (month: string, measuring: readonly MeterChain[]) => readonly AccountZone[] {
  const chainOf = (meterId: string): string => chains.find(({ meters }) => meters.some((meter) => meter.id === meterId))?.id ?? meterId;
  // Only what was planted on a known day may be young.
  const isDated = facts.some((zone) => zone.establishedOn !== null || zone.plantings.some(({ plantedOn }) => plantedOn !== null));
  const known = new Map<string, readonly AccountZone[]>();
  return (month, measuring) => {
    const ids = new Set(measuring.map(({ id }) => id));
    const key = [isDated ? month : '', ...ids].join();
    const present = known.get(key);
    if (present) return present;
    const zones = facts.map((zone) => inMonth(zoneInput(zone, chainOf, isDated ? month : null), ids));
    known.set(key, zones);
    return zones;
  };
}
