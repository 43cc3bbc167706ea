import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { MeterFact } from './property-facts.js';

/** A place where water is measured: one meter, or one and those that replaced it. */
export interface MeterChain {
  /** the newest meter's id: the account is kept under it */
  readonly id: string;
  /** oldest first */
  readonly meters: readonly MeterFact[];
}

/** A new meter within this many days of the old one's removal has replaced it: common practice. */
const SWAP_WITHIN_DAYS = 14;

/** Follows swaps: a removed meter belongs with the one of the same kind that was installed when it went. */
export function meterChains(meters: readonly MeterFact[]): MeterChain[] {
  const taken = new Set<string>();
  const successor = (old: MeterFact): MeterFact | undefined =>
    old.removedOn === null
      ? undefined
      : meters.find(
          (meter) =>
            meter.id !== old.id &&
            !taken.has(meter.id) &&
            meter.kind === old.kind &&
            meter.installedOn !== null &&
            Math.abs(dayNumberOfDate(meter.installedOn) - dayNumberOfDate(old.removedOn!)) <= SWAP_WITHIN_DAYS,
        );
  const replaces = new Map<string, MeterFact>();
  for (const old of meters) {
    const next = successor(old);
    if (!next) continue;
    taken.add(next.id);
    replaces.set(old.id, next);
  }
  return meters
    .filter((meter) => !taken.has(meter.id))
    .map((first) => {
      const chain = [first];
      for (let next = replaces.get(first.id); next && !chain.includes(next); next = replaces.get(next.id)) chain.push(next);
      return { id: chain.at(-1)!.id, meters: chain };
    });
}

/** Whether a chain measures anything on some days, as day numbers. */
export function measuresBetween(chain: MeterChain, from: number, until: number): boolean {
  const installed = chain.meters[0]!.installedOn;
  const removed = chain.meters.at(-1)!.removedOn;
  return (installed === null || dayNumberOfDate(installed) <= until) && (removed === null || dayNumberOfDate(removed) > from);
}
