import { probabilityAboveZero } from '../../../uncertainty/normal-probability.js';
import { daysPerMonth, type Sighting } from '../episode-of-sighting.js';
import type { ObservedMeter } from '../steps/observed-meter.js';
import type { ChangeScore } from './change-scores.js';
import { valueAt } from '../steps/value-at.js';

/** A zone that passes less than this share of its flow does not deliver. Common practice, no source. */
const NO_FLOW = 0.15;

/** A change that is named: the likeliest zone first, or all zones together. */
export interface NamedChange {
  readonly zones: readonly number[];
  readonly everywhere: boolean;
  readonly score: ChangeScore;
  readonly firstDay: number;
  readonly runDays: number;
  readonly day: number;
}

/**
 * End of the last step of a day that runs touched: the newest that a judgement of its runs needs.
 *
 * @param meter - The meter. [code]
 * @param day - The day, from 0. [–]
 * @returns Elapsed minute; the day's end where none is touched. [min]
 */
export function lastRunMinute(meter: ObservedMeter, day: number): number {
  const { days, usage, touched, evidence } = meter;
  for (let step = valueAt(days.firstStep, day + 1) - 1; step >= valueAt(days.firstStep, day); step--)
    if (touched[step]) return usage.firstMinute + (step + 1) * usage.stepMinutes;
  return evidence.midnights[day + 1] ?? 0;
}

/**
 * The sighting of a change of flow.
 *
 * @param meter - The meter. [code]
 * @param named - What changed. [code]
 * @returns The sighting, open since the newest run that was needed. [code]
 */
export function zoneSighting(meter: ObservedMeter, named: NamedChange): Sighting {
  const { zones, everywhere, score, firstDay, runDays, day } = named;
  const sighting: Sighting = {
    kind: 'zone flow changed',
    code: 'zone flow changed',
    zones,
    ofZone: !everywhere,
    fromMinute: meter.evidence.midnights[firstDay] ?? 0,
    openedMinute: lastRunMinute(meter, day),
    clearedMinute: null,
    litres: null,
    sdLitres: null,
    costs: score.change > 0,
    confidence: probabilityAboveZero(Math.abs(score.change), score.sd),
    evidence: { runDays, relativeSd: score.sd },
    details: {},
  };
  tellChange(meter, sighting, score, day);
  return sighting;
}

/**
 * Tells the level of a change: kind, litres of a month and what to look at.
 *
 * @param meter - The meter. [code]
 * @param sighting - The sighting; it is changed. [code]
 * @param score - The change and its standard deviation. [–]
 * @param day - The newest day, from 0. [–]
 */
export function tellChange(meter: ObservedMeter, sighting: Sighting, score: ChangeScore, day: number): void {
  const { change, sd } = score;
  const { zones, ofZone } = sighting;
  const judged = ofZone ? zones.slice(0, 1) : zones;
  const usual = judged.reduce((sum, zone) => sum + valueAt(meter.flows, zone), 0);
  const month = judged.reduce((sum, zone) => sum + valueAt(meter.flows, zone) * minutesPerMonth(meter, zone, day), 0);
  const none = change <= NO_FLOW - 1;
  sighting.kind = !ofZone || none ? 'not delivering' : 'zone flow changed';
  sighting.code = ofZone ? (none ? 'not delivering zone' : 'zone flow changed') : 'not delivering pressure';
  sighting.litres = Math.abs(change) * month;
  sighting.sdLitres = sd * month;
  sighting.details = {
    change,
    ratio: Math.max(0, 1 + change),
    usualLitresPerMinute: ofZone ? usual : null,
    litresPerMinute: ofZone ? Math.max(0, usual * (1 + change)) : null,
    // One of these it is, where usage does not tell them apart.
    ...(ofZone && zones.length > 1 && { zoneIds: zones.map((zone) => meter.evidence.zones[zone]?.zoneId ?? '') }),
    lookAt: lookAt(ofZone, none, change),
  };
}

function lookAt(ofZone: boolean, none: boolean, change: number): string {
  if (!ofZone) return 'pressure or main';
  if (none) return 'valve or wiring';
  return change > 0 ? 'broken head or pipe' : 'clogged heads or filter';
}

function minutesPerMonth(meter: ObservedMeter, zone: number, day: number): number {
  const first = Math.max(0, day - Math.floor(daysPerMonth) + 1);
  let minutes = 0;
  for (let past = first; past <= day; past++)
    for (const run of meter.runs[past] ?? []) if (run.zone === zone) minutes += run.end - run.begin;
  return (minutes * daysPerMonth) / (day - first + 1);
}
