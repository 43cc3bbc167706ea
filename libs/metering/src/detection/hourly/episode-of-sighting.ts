import { excessFamily } from '../cause.js';
import type { Episode } from '../evidence/episode.js';
import type { FindingKind } from '../finding-candidate.js';
import type { ObservedMeter } from './steps/observed-meter.js';
import { dateOfMinute, localDayOfMinute } from './steps/step-days.js';

/** Days of a month: a year by twelve. */
export const daysPerMonth = 365.25 / 12;

/** What a detector saw, in elapsed minutes and places of zones; still open while `clearedMinute` is null. */
export interface Sighting {
  kind: FindingKind;
  code: string;
  zones: readonly number[];
  /** Of one zone: its key is the zone's. */
  ofZone: boolean;
  fromMinute: number;
  openedMinute: number;
  clearedMinute: number | null;
  /** Litres of a month at the rate last seen, and how far they may be off. */
  litres: number | null;
  sdLitres: number | null;
  /** Water that did not flow cost nothing. */
  costs: boolean;
  confidence: number;
  atMost?: { litres: number | null; confidence: number };
  evidence: Record<string, unknown>;
  details: Record<string, string | number | null | readonly string[]>;
}

/**
 * Keeps the most water and the highest confidence of sightings that are open.
 *
 * @param sightings - Those told so far; those that ended stay as they are. [code]
 */
export function keepMost(sightings: readonly Sighting[]): void {
  for (const sighting of sightings) {
    const { atMost, litres, confidence, clearedMinute } = sighting;
    if (atMost && clearedMinute !== null) continue;
    const before = atMost ?? { litres, confidence };
    const most = before.litres === null || litres === null ? (before.litres ?? litres) : Math.max(before.litres, litres);
    sighting.atMost = { litres: most, confidence: Math.max(before.confidence, confidence) };
  }
}

/**
 * The episode of a sighting, in dates and identifiers.
 *
 * @param meter - The meter. [code]
 * @param sighting - What was seen. [code]
 * @returns The episode. [code]
 */
export function episodeOfSighting(meter: ObservedMeter, sighting: Sighting): Episode {
  const { evidence } = meter;
  const { kind, code, fromMinute, openedMinute, clearedMinute, litres, sdLitres, confidence } = sighting;
  const last = evidence.midnights[evidence.days] ?? openedMinute;
  const fromDate = dateOfMinute(evidence, fromMinute);
  // Of one zone: the likeliest first, beside it those from which the usage does not tell it.
  const zoneIds = sighting.zones.map((zone) => evidence.zones[zone]?.zoneId ?? '');
  const zone = sighting.ofZone ? (zoneIds[0] ?? null) : null;
  return {
    kind,
    ...causeOf(kind, evidence.meterId, zone, fromDate),
    meterId: evidence.meterId,
    controllerId: controllerOf(meter, sighting.zones),
    zoneIds,
    fromDate,
    // The minute before: an end at midnight belongs to the day that it ends.
    untilDate: dateOfMinute(evidence, (clearedMinute ?? last) - 1),
    litres,
    sdLitres,
    money: moneyOf(meter, sighting),
    confidence,
    ...(sighting.atMost && { atMost: sighting.atMost }),
    evidence: sighting.evidence,
    says: {
      code,
      details: {
        meterId: evidence.meterId,
        zoneId: zoneIds.length === 1 ? zone : null,
        since: fromDate,
        litresPerMonth: litres,
        ...sighting.details,
      },
    },
    openedLocalDay: localDayOfMinute(evidence, openedMinute),
    clearedLocalDay: clearedMinute === null ? null : localDayOfMinute(evidence, clearedMinute),
  };
}

// Flows on record are one cause, whether months or hours tell that they are off.
function causeOf(kind: FindingKind, meterId: string, zone: string | null, fromDate: string) {
  const record = `${kind} meter:${meterId}`;
  if (kind === 'flow to be tested') return { causeKey: record, causeFamily: record };
  return zone === null
    ? { causeKey: `${record} ${fromDate}`, causeFamily: excessFamily(meterId) }
    : { causeKey: `${kind} zone:${zone} ${fromDate}`, causeFamily: `zone flow zone:${zone}` };
}

function moneyOf({ evidence }: ObservedMeter, { costs, litres }: Sighting): number | null {
  return costs && litres !== null && evidence.pricePerLitre !== null ? litres * evidence.pricePerLitre : null;
}

function controllerOf({ evidence }: ObservedMeter, zones: readonly number[]): string | null {
  const controllers = new Set(zones.map((zone) => evidence.zones[zone]?.controllerId ?? null));
  const [only] = controllers;
  return controllers.size === 1 && only !== undefined ? only : null;
}
