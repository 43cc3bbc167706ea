import { controllersOf, type MeteredChain } from '../gather/account-input.js';
import type { EtoSeries } from '../gather/eto-series.js';
import { type MeterChain, meterChains } from '../gather/meter-chains.js';
import { meteredIntervals, type ReadMeter } from '../gather/metered-intervals.js';
import type { PropertyFacts } from '../gather/property-facts.js';
import { litresPerMmOf, zoneInput } from '../gather/zone-input.js';
import { zonesByMonth } from '../gather/zones-by-month.js';
import { neededByDay } from './needed-by-day.js';
import { programmedWater } from './programmed-water.js';
import { propertyCalendar } from './property-calendar.js';
import { replayedController } from './replayed-controller.js';
import { zonesOfMeter } from './zones-of-meter.js';

/** A place of measuring with its volumes and its readings as they are judged. */
export type MeasuredChain = MeteredChain & { readonly read: readonly ReadMeter[] };

/** Every place of measuring of a property, by what is on record now. */
export function measuredChains(facts: PropertyFacts, eto: EtoSeries): readonly MeasuredChain[] {
  const litresPerMm = litresPerMmOf(facts.zones.map((zone) => zoneInput(zone, (meterId) => meterId, null)));
  const chains = meterChains(facts.meters);
  return chains.map((chain) => {
    const demand = { eto, litresPerMm, programmedLitres: programmedBetween(facts, eto, chain, chains) };
    return { chain, ...meteredIntervals(chain, facts, demand) };
  });
}

/** What the settings put out between two instants; replayed only when somebody asks, since only a register that stands still does. [L] */
function programmedBetween(facts: PropertyFacts, eto: EtoSeries, chain: MeterChain, chains: readonly MeterChain[]) {
  let known: ReturnType<typeof programmedUntil> | undefined;
  return (from: number, until: number): number | null => {
    known ??= programmedUntil(facts, eto, chain, chains);
    const [before, after] = [known(from), known(until)];
    return after.unknownDays > before.unknownDays ? null : after.litres - before.litres;
  };
}

function programmedUntil(facts: PropertyFacts, eto: EtoSeries, chain: MeterChain, chains: readonly MeterChain[]) {
  const days = facts.readings.map(({ localDay }) => Math.floor(localDay));
  const firstDay = days.reduce((first, day) => Math.min(first, day), Number.POSITIVE_INFINITY);
  const span = { firstDay, days: days.reduce((last, day) => Math.max(last, day), firstDay) - firstDay + 1 };
  const calendar = propertyCalendar(facts.property.timeZone, span);
  const controllers = controllersOf(facts).map((controller) => replayedController(controller, calendar, eto.weather));
  const month = new Date((firstDay + span.days - 1) * 86_400_000).toISOString().slice(0, 'YYYY-MM'.length);
  const zones = zonesOfMeter(zonesByMonth(facts.zones, chains)(month, chains), chain.id, chains.length);
  const { litres } = programmedWater({ calendar, controllers, neededOf: neededByDay(eto.weather, span) }, zones);
  const [sums, unknown] = [new Float64Array(span.days + 1), new Float64Array(span.days + 1)];
  litres.forEach((own, day) => {
    const isUnknown = Number.isNaN(own);
    sums[day + 1] = sums[day]! + (isUnknown ? 0 : own);
    unknown[day + 1] = unknown[day]! + (isUnknown ? 1 : 0);
  });
  return (localDay: number) => {
    const at = Math.min(span.days, Math.max(0, localDay - firstDay));
    const day = Math.min(span.days - 1, Math.floor(at));
    const within = (values: Float64Array) => values[day]! + (at - day) * (values[day + 1]! - values[day]!);
    return { litres: within(sums), unknownDays: within(unknown) };
  };
}
