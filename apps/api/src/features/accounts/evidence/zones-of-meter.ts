import type { AccountZone } from '@rillbook/metering/account/account-input.js';

/** The zones whose water a meter passes; null where they are not assigned to one of several meters. */
export function zonesOfMeter(zones: readonly AccountZone[], meterId: string, meters: number): readonly AccountZone[] | null {
  const metered = zones.filter((zone) => !zone.handWatered && zone.meterId !== 'none');
  if (meters > 1 && metered.some((zone) => zone.meterId === null)) return null;
  return metered.filter((zone) => zone.meterId === meterId || zone.meterId === null);
}

/** What people say that they water by hand from a meter; a hose is fed by the meter of its zone, or by the only one. [L/d] */
export function handLitresPerDay(zones: readonly AccountZone[], meterId: string, meters: number): number {
  const own = zones.filter((zone) => zone.handWatered && (zone.meterId === meterId || (zone.meterId === null && meters === 1)));
  return own.reduce((sum, zone) => sum + (zone.handLitresPerWeek ?? 0), 0) / 7;
}
