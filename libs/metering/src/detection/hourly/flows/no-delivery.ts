import { daysPerMonth, type Sighting } from '../episode-of-sighting.js';
import type { ObservedMeter } from '../steps/observed-meter.js';
import { lastRunMinute } from './zone-sighting.js';
import { valueAt } from '../steps/value-at.js';

/** Days of runs without water that open: a rain sensor or a day's work makes one or two. Common practice, no source. */
const DAYS_WITHOUT = 3;
/** Rain of this and the two days before by which a sensor may have held the runs back. Common practice, no source. [mm] */
const SENSOR_RAIN_MM = 3;
const SENSOR_DAYS = 3;

/** What is followed of runs that pass no water. */
export interface NoDelivery {
  days: number[];
  litres: number;
  open: Sighting | null;
  readonly told: Sighting[];
}

/**
 * Nothing followed yet.
 *
 * @returns No day without water. [–]
 */
export function noNoDelivery(): NoDelivery {
  return { days: [], litres: 0, open: null, told: [] };
}

/**
 * Follows runs that pass no water at all, on days that no rain explains.
 *
 * @param meter - The meter. [code]
 * @param none - What is followed. [code]
 * @param day - The day, from 0. [–]
 */
export function followDelivery(meter: ObservedMeter, none: NoDelivery, day: number): void {
  const kind = meter.kinds[day];
  if (kind === 'ran') {
    if (none.open) none.open.clearedMinute = lastRunMinute(meter, day);
    Object.assign(none, { days: [], litres: 0, open: null });
  }
  if (kind !== 'skipped' || rained(meter, day)) return;
  none.days.push(day);
  none.litres += expectedOf(meter, day);
  if (none.open) tell(none.open, none, day);
  else if (none.days.length >= DAYS_WITHOUT) open(meter, none, day);
}

// Rain that is not known may have been.
function rained({ evidence }: ObservedMeter, day: number): boolean {
  let rain = 0;
  for (let past = Math.max(0, day - SENSOR_DAYS + 1); past <= day; past++) rain += evidence.rainMm[past] ?? Number.NaN;
  return !(rain < SENSOR_RAIN_MM);
}

function expectedOf({ days, expected }: ObservedMeter, day: number): number {
  let litres = 0;
  for (let step = days.firstStep[day] ?? 0; step < valueAt(days.firstStep, day + 1); step++) litres += expected[step] ?? 0;
  return litres;
}

function open(meter: ObservedMeter, none: NoDelivery, day: number): void {
  const zones = new Set(none.days.flatMap((past) => (meter.runs[past] ?? []).map(({ zone }) => zone)));
  const sighting: Sighting = {
    kind: 'not delivering',
    code: 'not delivering runs',
    zones: [...zones].sort((a, b) => a - b),
    ofZone: false,
    fromMinute: meter.evidence.midnights[none.days[0] ?? day] ?? 0,
    openedMinute: lastRunMinute(meter, day),
    clearedMinute: null,
    litres: null,
    sdLitres: null,
    costs: false,
    confidence: 1,
    evidence: {},
    details: {},
  };
  none.open = sighting;
  none.told.push(sighting);
  tell(sighting, none, day);
}

function tell(sighting: Sighting, { days, litres }: NoDelivery, day: number): void {
  const span = day - (days[0] ?? day) + 1;
  sighting.litres = Number.isNaN(litres) ? null : (litres * daysPerMonth) / span;
  sighting.evidence = { runDays: days.length, expectedLitres: Number.isNaN(litres) ? null : litres };
  sighting.details = { runDays: days.length, lookAt: 'controller and master valve' };
}
