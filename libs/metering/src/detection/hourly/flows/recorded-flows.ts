import { probabilityAboveZero } from '../../../uncertainty/normal-probability.js';
import { daysPerMonth, type Sighting } from '../episode-of-sighting.js';
import type { ObservedMeter } from '../steps/observed-meter.js';
import { valueAt } from '../steps/value-at.js';

/** Ratios this near to 1 say nothing about flows on record: a meter and a flow test are good to some percent each. As by the month. */
const LEAST_OFF = 0.07;
const LEAST_CONFIDENCE = 0.9;
/** Pressure moves all flows together by this share from season to season. Common practice, no source. */
const PRESSURE_OF_SEASON = 0.02;
/** Days that ran before flows are compared, and after which what was not off from the start is no matter of the record. */
const FROM_DAYS = 10;
const UNTIL_DAYS = 60;

/** What is followed of the flows on record. */
export interface RecordedFlows {
  open: Sighting | null;
  readonly told: Sighting[];
}

/**
 * Nothing followed yet.
 *
 * @returns No comparison. [–]
 */
export function noRecordedFlows(): RecordedFlows {
  return { open: null, told: [] };
}

/**
 * Compares the flows that usage tells with those on record, all zones together, once they are learnt: flow to be tested.
 *
 * r = Σ q · minutes / Σ record · minutes; told when |ln r| is beyond 0.07 with a confidence of 0.9, from the start on
 *
 * @param meter - The meter, its flows just learnt. [code]
 * @param flows - What is followed. [code]
 * @param day - The newest day, from 0. [–]
 */
export function followRecord(meter: ObservedMeter, flows: RecordedFlows, day: number): void {
  const { ranDays } = meter;
  if (ranDays.length < FROM_DAYS || (!flows.open && ranDays.length > UNTIL_DAYS)) return;
  const compared = compare(meter, ranDays.slice(-UNTIL_DAYS));
  if (!compared) return;
  const beyond = Math.abs(Math.log(compared.ratio)) - Math.log1p(LEAST_OFF);
  const confidence = probabilityAboveZero(beyond, compared.relativeSd);
  if (!flows.open && confidence >= LEAST_CONFIDENCE) {
    flows.open = sightingOf(meter, day);
    flows.told.push(flows.open);
  }
  if (flows.open) tell(flows.open, compared, confidence);
}

interface Compared {
  readonly ratio: number;
  readonly relativeSd: number;
  readonly recordedPerMonth: number;
}

function compare(meter: ObservedMeter, days: readonly number[]): Compared | null {
  const { evidence, flows } = meter;
  const minutes = minutesOf(meter, days);
  const ran = [...minutes.keys()].filter((zone) => valueAt(minutes, zone) > 0);
  const sum = (of: (zone: number) => number) => ran.reduce((all, zone) => all + valueAt(minutes, zone) * of(zone), 0);
  const told = sum((zone) => flows[zone] ?? Number.NaN);
  const recorded = sum((zone) => evidence.zones[zone]?.flowLPerMin ?? Number.NaN);
  if (!(told > 0 && recorded > 0)) return null;
  const variance = sum((zone) => sum((other) => valueAt(meter.flowCovariance, zone * minutes.length + other)));
  const relativeSd = Math.hypot(Math.sqrt(Math.max(0, variance)) / told, PRESSURE_OF_SEASON);
  const span = Math.max(1, valueAt(days, days.length - 1) - valueAt(days, 0));
  return { ratio: told / recorded, relativeSd, recordedPerMonth: (recorded * daysPerMonth) / span };
}

function minutesOf({ flows, runs }: ObservedMeter, days: readonly number[]): Float64Array {
  const minutes = new Float64Array(flows.length);
  for (const day of days) for (const { zone, begin, end } of runs[day] ?? []) minutes[zone] = valueAt(minutes, zone) + end - begin;
  return minutes;
}

function sightingOf({ evidence }: ObservedMeter, day: number): Sighting {
  return {
    kind: 'flow to be tested',
    code: 'flow to be tested',
    zones: evidence.zones.map((_, zone) => zone),
    ofZone: false,
    fromMinute: evidence.midnights[0] ?? 0,
    openedMinute: evidence.midnights[day + 1] ?? 0,
    clearedMinute: null,
    litres: null,
    sdLitres: null,
    costs: false,
    confidence: 1,
    evidence: {},
    details: {},
  };
}

function tell(sighting: Sighting, { ratio, relativeSd, recordedPerMonth }: Compared, confidence: number): void {
  sighting.litres = Math.abs(ratio - 1) * recordedPerMonth;
  sighting.sdLitres = relativeSd * ratio * recordedPerMonth;
  sighting.confidence = confidence;
  sighting.evidence = { usualRatio: ratio, ratioSd: relativeSd * ratio };
  sighting.details = { ratio, usualRatio: ratio, programmedLitres: recordedPerMonth, meteredLitres: ratio * recordedPerMonth };
}
