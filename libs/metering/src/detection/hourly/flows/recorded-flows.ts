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
 * Compares what runs passed with what the flows on record say, all zones together: flow to be tested.
 *
 * r = Σ litres of the runs / Σ record · minutes; told when |ln r| is beyond 0.07 with a confidence of 0.9, from the start on; ended when it is surely within
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
  if (!flows.open) return;
  tell(flows.open, compared, confidence);
  if (Math.abs(Math.log(compared.ratio)) + compared.relativeSd >= Math.log1p(LEAST_OFF)) return;
  flows.open.clearedMinute = meter.evidence.midnights[day + 1] ?? 0;
  flows.open = null;
}

interface Compared {
  readonly ratio: number;
  readonly relativeSd: number;
  readonly recordedPerMonth: number;
}

// Ratio of sums over days, which no zone's own flow enters, with the standard deviation of its days' residuals.
function compare(meter: ObservedMeter, days: readonly number[]): Compared | null {
  const known = days
    .map((day) => [usedByRuns(meter, day), onRecord(meter, day)] as const)
    .filter(([used, wanted]) => wanted > 0 && used >= 0);
  const told = known.reduce((sum, [used]) => sum + used, 0);
  const recorded = known.reduce((sum, [, wanted]) => sum + wanted, 0);
  if (!(told > 0 && known.length >= FROM_DAYS)) return null;
  const ratio = told / recorded;
  const squares = known.reduce((sum, [used, wanted]) => sum + (used - ratio * wanted) ** 2, 0);
  const relativeSd = Math.hypot(Math.sqrt((squares * known.length) / (known.length - 1)) / told, PRESSURE_OF_SEASON);
  const span = Math.max(1, valueAt(days, days.length - 1) - valueAt(days, 0));
  return { ratio, relativeSd, recordedPerMonth: (recorded * daysPerMonth) / span };
}

// Litres of the steps that runs touch; not a number where one of them is not known, or the day's water has got another explanation.
function usedByRuns({ days: { firstStep }, usage, touched, indoor, claimed, excused }: ObservedMeter, day: number): number {
  if (excused[day] === 1) return Number.NaN;
  let litres = 0;
  for (let step = valueAt(firstStep, day); step < valueAt(firstStep, day + 1); step++)
    if (touched[step]) litres += valueAt(usage.litres, step) - valueAt(indoor, step) - valueAt(claimed, step);
  return litres;
}

function onRecord({ evidence, runs }: ObservedMeter, day: number): number {
  return (runs[day] ?? []).reduce(
    (sum, { zone, begin, end }) => sum + (end - begin) * (evidence.zones[zone]?.flowLPerMin ?? Number.NaN),
    0,
  );
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
