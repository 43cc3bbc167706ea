import type { EvidenceRun, MeterEvidence } from '../../evidence/meter-evidence.js';
import { firstBeginningAt } from './first-beginning-at.js';

/** Share of an interval's programmed water that each zone has, by the runs; null where runs or flows are not known. */
export type ZoneMix = ReadonlyMap<string, number> | null;

/** Programmed water and how it is divided. */
interface MixedWater {
  readonly programmed: number | null;
  readonly mix: ZoneMix;
}

/**
 * How an interval's programmed water is divided among zones.
 *
 * @param evidence - Runs in order of their begin, midnights and flows on record. [L/min]
 * @param fromLocalDay - Begin of the interval; the whole day is counted. [d]
 * @param toLocalDay - Its end. [d]
 * @returns Shares by zone, together 1. [–]
 */
export function zoneMix(evidence: MeterEvidence, fromLocalDay: number, toLocalDay: number): ZoneMix {
  const { midnights, firstDay, runs, zones, litresOfZones } = evidence;
  if (litresOfZones) return mixOf(zones, litresOfZones, Math.floor(fromLocalDay) - firstDay, Math.floor(toLocalDay) - firstDay);
  const [begin, end] = [midnights[Math.floor(fromLocalDay) - firstDay], midnights[Math.floor(toLocalDay) - firstDay]];
  if (begin === undefined || end === undefined || zones.some(({ flowLPerMin }) => flowLPerMin === null)) return null;
  const flows = new Map(zones.map(({ zoneId, flowLPerMin }) => [zoneId, flowLPerMin ?? 0]));
  const litres = new Map<string, number>();
  let whole = 0;
  for (let at = firstBeginningAt(runs, begin); at < runs.length; at += 1) {
    const run = runs[at] as EvidenceRun;
    if (run.begin >= end) break;
    const own = (flows.get(run.zoneId) ?? 0) * (run.end - run.begin);
    litres.set(run.zoneId, (litres.get(run.zoneId) ?? 0) + own);
    whole += own;
  }
  return whole > 0 ? new Map([...litres].map(([zoneId, own]) => [zoneId, own / whole])) : null;
}

function mixOf(zones: MeterEvidence['zones'], litresOfZones: readonly Float64Array[], from: number, until: number): ZoneMix {
  if (from < 0 || zones.some(({ flowLPerMin }) => flowLPerMin === null)) return null;
  const own = litresOfZones.map((litres) => knownBetween(litres, from, until));
  const whole = own.reduce((sum, litres) => sum + litres, 0);
  return whole > 0 ? new Map(zones.map(({ zoneId }, at) => [zoneId, (own[at] ?? 0) / whole])) : null;
}

function knownBetween(litres: Float64Array, from: number, until: number): number {
  let sum = 0;
  for (let day = from; day < Math.min(until, litres.length); day += 1) sum += litres[day] || 0;
  return sum;
}

/**
 * The mix of two intervals together.
 *
 * @param one - Mix and programmed water of the one. [L]
 * @param other - Of the other. [L]
 * @returns Shares of both, each by its water; where one is not known the other's. [–]
 */
export function mixTogether(one: MixedWater, other: MixedWater): ZoneMix {
  const [a, b] = [one.programmed ?? 0, other.programmed ?? 0];
  if (one.mix === null || other.mix === null || !(a + b > 0)) return other.mix ?? one.mix;
  const shares = new Map([...one.mix].map(([zoneId, share]) => [zoneId, (share * a) / (a + b)]));
  for (const [zoneId, share] of other.mix) shares.set(zoneId, (shares.get(zoneId) ?? 0) + (share * b) / (a + b));
  return shares;
}
