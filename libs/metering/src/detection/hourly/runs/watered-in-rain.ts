import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import type { Sighting } from '../episode-of-sighting.js';
import { lastRunMinute } from '../flows/zone-sighting.js';
import type { ObservedMeter } from '../steps/observed-meter.js';
import { valueAt } from '../steps/value-at.js';

/** Rain of the two days before that makes a storm: less wets leaves and little soil. Common practice, no source. [mm] */
const STORM_MM = 6;
const STORM_DAYS = 2;
/** Runs that pass at least this share of what is expected did run. */
const RAN_SHARE = 0.5;
/** Days without such a day after which a new one is of another storm. */
const SAME_STORM_DAYS = 3;
/** Need that counts as none: rounding of a sum of litres. [L] */
const NO_NEED_LITRES = 1e-6;

/** What is followed of runs after rain. */
export interface WateredInRain {
  readonly days: { readonly day: number; readonly rainMm: number; readonly litres: number }[];
  open: Sighting | null;
  readonly told: Sighting[];
}

/**
 * Nothing followed yet.
 *
 * @returns No such day. [–]
 */
export function noWateredInRain(): WateredInRain {
  return { days: [], open: null, told: [] };
}

/**
 * Follows runs that passed water although the rain of the two days before covered the need: none on that day nor on the day before.
 *
 * @param meter - The meter. [code]
 * @param wet - What is followed. [code]
 * @param day - The day, from 0. [–]
 */
export function followRain(meter: ObservedMeter, wet: WateredInRain, day: number): void {
  const rainMm = rainBefore(meter, day);
  const covered = rainMm >= STORM_MM && noNeed(meter, day) && noNeed(meter, day - 1);
  const litres = covered && didRun(meter, day) ? runLitres(meter, day) : 0;
  if (litres > 0) {
    if (!wet.open) wet.days.length = 0;
    wet.days.push({ day, rainMm, litres });
    wet.open ??= begin(meter, wet, day);
    tell(meter, wet, wet.open);
  } else if (wet.open && day - lastDay(wet, day) >= SAME_STORM_DAYS) {
    wet.open.clearedMinute = valueAt(meter.evidence.midnights, day + 1);
    wet.open = null;
  }
}

function didRun({ kinds, runs }: ObservedMeter, day: number): boolean {
  return kinds[day] === 'ran' && (runs[day] ?? []).length > 0;
}

function lastDay({ days }: WateredInRain, otherwise: number): number {
  return days[days.length - 1]?.day ?? otherwise;
}

function rainBefore({ evidence }: ObservedMeter, day: number): number {
  if (day < STORM_DAYS) return Number.NaN;
  let rain = 0;
  for (let past = day - STORM_DAYS; past < day; past++) rain += evidence.rainMm[past] ?? Number.NaN;
  return rain;
}

function noNeed({ evidence }: ObservedMeter, day: number): boolean {
  return (evidence.neededLitres[day] ?? Number.NaN) <= NO_NEED_LITRES;
}

// Litres that passed in the steps of runs, zero where the runs hardly ran.
function runLitres({ days, usage, touched, expected, indoor, claimed }: ObservedMeter, day: number): number {
  let [passed, wanted] = [0, 0];
  for (let step = days.firstStep[day] ?? 0; step < valueAt(days.firstStep, day + 1); step++) {
    const used = (usage.litres[step] ?? Number.NaN) - valueAt(indoor, step) - valueAt(claimed, step);
    if (!touched[step] || Number.isNaN(used)) continue;
    passed += used;
    wanted += expected[step] ?? 0;
  }
  return passed >= RAN_SHARE * wanted ? passed : 0;
}

function begin(meter: ObservedMeter, wet: WateredInRain, day: number): Sighting {
  const sighting: Sighting = {
    kind: 'watered in rain',
    code: 'watered in rain',
    zones: [...new Set((meter.runs[day] ?? []).map(({ zone }) => zone))].sort((a, b) => a - b),
    ofZone: false,
    fromMinute: meter.evidence.midnights[day] ?? 0,
    // The need of the day is known when the day's weather is.
    openedMinute: Math.max(lastRunMinute(meter, day), meter.evidence.midnights[day + 1] ?? 0),
    clearedMinute: null,
    litres: null,
    sdLitres: null,
    costs: true,
    confidence: 1,
    evidence: {},
    details: {},
  };
  wet.told.push(sighting);
  return sighting;
}

function tell({ evidence }: ObservedMeter, { days }: WateredInRain, sighting: Sighting): void {
  sighting.litres = days.reduce((sum, { litres }) => sum + litres, 0);
  sighting.evidence = {
    days: days.map(({ day, rainMm, litres }) => ({ date: dateOfDayNumber(evidence.firstDay + day), rainBeforeMm: rainMm, litres })),
  };
  sighting.details = {
    days: days.length,
    rainMm: days.reduce((most, { rainMm }) => Math.max(most, rainMm), 0),
    litresOfStorm: sighting.litres,
    lookAt: 'rain sensor and rain pause',
  };
}
