import { daysPerMonth, type Sighting } from '../episode-of-sighting.js';
import type { ObservedMeter } from '../steps/observed-meter.js';
import { controllersWithoutWater } from './controller-delivery.js';
import { lastRunMinute } from '../flows/zone-sighting.js';
import { valueAt } from '../steps/value-at.js';

/** Days of runs without water that open: a rain sensor or a day's work makes one or two. Common practice, no source. */
const DAYS_WITHOUT = 3;
/** Rain of this and the two days before by which a sensor may have held the runs back. Common practice, no source. [mm] */
const SENSOR_RAIN_MM = 3;
const SENSOR_DAYS = 3;

/** Runs that pass no water: of the whole meter, or of one of its controllers. */
interface DryRuns {
  days: number[];
  litres: number;
  open: Sighting | null;
}

/** What is followed of runs that pass no water; `whole` is the meter, `byController` each by its place. */
export interface NoDelivery {
  readonly whole: DryRuns;
  readonly byController: DryRuns[];
  readonly told: Sighting[];
}

/**
 * Nothing followed yet.
 *
 * @returns No day without water. [–]
 */
export function noNoDelivery(): NoDelivery {
  return { whole: noDryRuns(), byController: [], told: [] };
}

const noDryRuns = (): DryRuns => ({ days: [], litres: 0, open: null });

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
    end(meter, none.whole, day);
    followControllers(meter, none, day);
  }
  if (kind !== 'skipped' || rained(meter, day)) return;
  add(meter, none, none.whole, { day, litres: expectedOf(meter, day), zones: null });
}

// One of several controllers may be off: its zones' flows are not learnt from such days.
function followControllers(meter: ObservedMeter, none: NoDelivery, day: number): void {
  const without = controllersWithoutWater(meter, day);
  meter.controllers.forEach((_, controller) => {
    const dry = (none.byController[controller] ??= noDryRuns());
    const litres = without.get(controller);
    const zones = meter.flows.length > 0 ? [...meter.controllerOf.keys()].filter((zone) => meter.controllerOf[zone] === controller) : [];
    const runs = (meter.runs[day] ?? []).some(({ zone }) => meter.controllerOf[zone] === controller);
    if (litres === undefined && runs && !meter.excused[day]) end(meter, dry, day);
    if (litres === undefined) return;
    meter.excused[day] = 1;
    if (!rained(meter, day)) add(meter, none, dry, { day, litres, zones });
  });
}

function end(meter: ObservedMeter, dry: DryRuns, day: number): void {
  if (dry.open) dry.open.clearedMinute = lastRunMinute(meter, day);
  Object.assign(dry, noDryRuns());
}

interface DryDay {
  readonly day: number;
  readonly litres: number;
  /** Zones of the controller; null of the whole meter. */
  readonly zones: readonly number[] | null;
}

function add(meter: ObservedMeter, none: NoDelivery, dry: DryRuns, { day, litres, zones }: DryDay): void {
  dry.days.push(day);
  dry.litres += litres;
  if (dry.open) tell(dry.open, dry, day);
  else if (dry.days.length >= DAYS_WITHOUT) open(meter, none, dry, { day, zones });
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

function open(meter: ObservedMeter, none: NoDelivery, dry: DryRuns, { day, zones: own }: Omit<DryDay, 'litres'>): void {
  const ran = dry.days.flatMap((past) => (meter.runs[past] ?? []).map(({ zone }) => zone));
  const zones = new Set(ran.filter((zone) => own === null || own.includes(zone)));
  const sighting: Sighting = {
    kind: 'not delivering',
    code: 'not delivering runs',
    zones: [...zones].sort((a, b) => a - b),
    ofZone: false,
    fromMinute: meter.evidence.midnights[dry.days[0] ?? day] ?? 0,
    openedMinute: lastRunMinute(meter, day),
    clearedMinute: null,
    litres: null,
    sdLitres: null,
    costs: false,
    confidence: 1,
    evidence: {},
    details: {},
  };
  dry.open = sighting;
  none.told.push(sighting);
  tell(sighting, dry, day);
}

function tell(sighting: Sighting, { days, litres }: DryRuns, day: number): void {
  const span = day - (days[0] ?? day) + 1;
  sighting.litres = Number.isNaN(litres) ? null : (litres * daysPerMonth) / span;
  sighting.evidence = { runDays: days.length, expectedLitres: Number.isNaN(litres) ? null : litres };
  sighting.details = { runDays: days.length, lookAt: 'controller and master valve' };
}
