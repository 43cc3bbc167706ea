import type { MeteredChain } from './account-input.js';
import type { EtoSeries } from './eto-series.js';
import { meterChains } from './meter-chains.js';
import { meteredIntervals, type ReadMeter } from './metered-intervals.js';
import type { PropertyFacts } from './property-facts.js';
import { litresPerMmOf, zoneInput } from './zone-input.js';

/** A place of measuring with its volumes and its readings as they are judged. */
export type MeasuredChain = MeteredChain & { readonly read: readonly ReadMeter[] };

/** Every place of measuring of a property, by what is on record now. */
export function measuredChains(facts: PropertyFacts, eto: EtoSeries): readonly MeasuredChain[] {
  const litresPerMm = litresPerMmOf(facts.zones.map((zone) => zoneInput(zone, (meterId) => meterId, null)));
  return meterChains(facts.meters).map((chain) => ({ chain, ...meteredIntervals(chain, facts, { eto, litresPerMm }) }));
}
