import type { Sighting } from '../episode-of-sighting.js';
import type { ObservedMeter } from '../steps/observed-meter.js';
import type { RunMinutes } from '../steps/run-minutes.js';
import { type ChangeScore, changeScores } from './change-scores.js';
import { type DayEquations, dayEquations } from './day-equations.js';
import { sameDesign } from './same-design.js';
import { lastRunMinute, tellChange, zoneSighting } from './zone-sighting.js';
import { valueAt } from '../steps/value-at.js';

/** Days that ran over which a change is looked for, the newest of them the last. */
const WINDOWS = [3, 4, 6, 9, 13] as const;
/**
 * A change must be this many standard deviations: a year has some 150 days that ran, 12 zones and two or three independent windows, 5,000
 * chances; a normal quantity passes 5 in one of two million, and what is learnt of pressure and clocks is not quite normal.
 */
const DECISION = 4.5;
/** Smaller changes are not told: half of the 25 % that is to be found, and more than what seasons do to pressure. */
const LEAST_CHANGE = 0.15;
/** Days that ran from which flows are learnt, before a change is looked for. */
const LEAST_LEARNT = 8;
/** Each day alone must say at least this share of the change, all but one day in four: no single day makes a change. */
const SAYS_SHARE = 0.3;
const MOST_SILENT_SHARE = 0.25;
/** Other zones that explain at least this share of the squares are named as well. */
const ALSO_LIKELY = 0.85;
/** A flow is back when these many days that ran, together, are within this share of what it was. */
const BACK_RUNS = 3;
const BACK_WITHIN = 0.1;

/** What is followed of the zones of a meter: equations of days that ran, and changes that are open by place (all zones: the last). */
export interface ZoneChanges {
  equations: DayEquations[];
  /** Days up to this one are those from which flows were learnt, or have got another explanation. */
  learntUntil: number;
  learntDays: readonly number[];
  readonly open: Map<number, Sighting>;
  readonly told: Sighting[];
}

/**
 * Nothing followed yet.
 *
 * @returns No day. [–]
 */
export function noZoneChanges(): ZoneChanges {
  return { equations: [], learntUntil: Number.POSITIVE_INFINITY, learntDays: [], open: new Map(), told: [] };
}

/**
 * Follows the zones through a day that ran. The residuals of the newest days, against the flows learnt from days before them, are explained by a
 * change of one zone alone or of all together; the one that explains most is named, when it is beyond chance.
 *
 * @param meter - The meter; the factor of a changed zone is set. [code]
 * @param changes - What is followed. [code]
 * @param day - The day, from 0, the newest of those that ran. [–]
 * @param design - Minutes of the day. [min]
 * @returns True when a finding opened. [–]
 */
export function followZones(meter: ObservedMeter, changes: ZoneChanges, day: number, design: RunMinutes): boolean {
  changes.equations.push(dayEquations(meter, day, design));
  if (meter.ranDays.length < LEAST_LEARNT || meter.flows.some(Number.isNaN)) return false;
  for (const [place, sighting] of [...changes.open]) reviewOpen(meter, changes, place, sighting);
  const alike = sameDesign(meter, changes.learntDays, day);
  const best = likeliestWindow(meter, changes, alike);
  return best !== null && nameCause(meter, changes, best, day);
}

interface ScoredWindow {
  readonly squares: number;
  readonly days: readonly DayEquations[];
  readonly scores: readonly ChangeScore[];
}

function likeliestWindow(meter: ObservedMeter, changes: ZoneChanges, alike: boolean): ScoredWindow | null {
  const free = changes.equations.filter((one) => one.day > changes.learntUntil);
  let best: ScoredWindow | null = null;
  for (const window of WINDOWS) {
    if (free.length < window) break;
    const days = free.slice(-window);
    const scores = changeScores(meter, days, alike);
    const squares = Math.max(...scores.map((score, place) => (changes.open.has(place) ? 0 : squaresOf(score))));
    if (squares > DECISION ** 2 && squares > (best?.squares ?? 0)) best = { squares, days, scores };
  }
  return best;
}

function squaresOf({ change, sd }: ChangeScore): number {
  return (change / sd) ** 2;
}

function nameCause(meter: ObservedMeter, changes: ZoneChanges, { days, scores }: ScoredWindow, day: number): boolean {
  const all = scores.length - 1;
  const squares = scores.map((score, place) => (changes.open.has(place) ? 0 : squaresOf(score)));
  const best = squares.indexOf(Math.max(...squares));
  const score = scores[best] as ChangeScore;
  // More from all zones at once is no zone's doing: it is judged as unexplained use of the meter.
  const everywhere = best === all && all > 1;
  if ((everywhere && score.change > 0) || !saidByDays(meter, days, best, score.change)) return false;
  const zones = everywhere ? [...meter.flows.keys()] : likelyZones(squares, best);
  const firstDay = days[0]?.day ?? day;
  const sighting = zoneSighting(meter, { zones, everywhere, score, firstDay, runDays: days.length, day });
  changes.told.push(sighting);
  changes.open.set(everywhere ? all : valueAt(zones, 0), sighting);
  setFactor(meter, sighting, score.change);
  const past = new Set(days.map((one) => one.day));
  for (const one of past) meter.factorOfDay.set(meter.factors, one * meter.flows.length);
  changes.equations = changes.equations.map((one) => (past.has(one.day) ? dayEquations(meter, one.day) : one));
  return true;
}

function likelyZones(squares: readonly number[], best: number): readonly number[] {
  const all = squares.length - 1;
  const first = best === all ? 0 : best;
  const least = ALSO_LIKELY * valueAt(squares, best);
  return [first, ...squares.flatMap((value, zone) => (zone !== first && zone < all && value >= least ? [zone] : []))];
}

// The change is large enough and each day alone says it: c / (G q) of the zone, or of all.
function saidByDays({ flows }: ObservedMeter, days: readonly DayEquations[], place: number, change: number): boolean {
  if (Math.abs(change) < LEAST_CHANGE) return false;
  const n = flows.length;
  const silent = days.filter(({ gram, residual }) => {
    let [along, weight] = [0, 0];
    for (let zone = 0; zone < n; zone++) {
      if (place < n && zone !== place) continue;
      along += valueAt(flows, zone) * valueAt(residual, zone);
      for (let other = 0; other < n; other++)
        if (place === n || other === place) weight += valueAt(flows, zone) * valueAt(gram, zone * n + other) * valueAt(flows, other);
    }
    return !(Math.sign(change) * along >= SAYS_SHARE * Math.abs(change) * weight);
  });
  return silent.length <= MOST_SILENT_SHARE * days.length;
}

function setFactor(meter: ObservedMeter, { ofZone, zones }: Sighting, change: number): void {
  for (const zone of ofZone ? zones.slice(0, 1) : zones) meter.factors[zone] = Math.max(0, 1 + change);
}

function reviewOpen(meter: ObservedMeter, changes: ZoneChanges, place: number, sighting: Sighting): void {
  const zones = meter.flows.length;
  const zone = place < zones ? place : valueAt(sighting.zones, 0);
  const own = changes.equations.filter(({ gram }) => valueAt(gram, zone * zones + zone) > 0);
  const newest = own[own.length - 1]?.day ?? 0;
  const recent = own.slice(-BACK_RUNS).filter((one) => valueAt(meter.evidence.midnights, one.day) > sighting.openedMinute - 1);
  if (recent.length < BACK_RUNS || newest !== meter.ranDays[meter.ranDays.length - 1]) return;
  const score = changeScores(meter, recent, true)[place] as ChangeScore;
  const before = recent.reduce((sum, one) => sum + (meter.factorOfDay[one.day * zones + zone] ?? 1), 0) / recent.length;
  const change = before - 1 + score.change;
  const back = Math.abs(change) <= BACK_WITHIN;
  if (back) {
    sighting.clearedMinute = lastRunMinute(meter, newest);
    changes.open.delete(place);
    changes.learntUntil = Math.max(changes.learntUntil, newest);
  } else tellChange(meter, sighting, { change, sd: score.sd }, newest);
  setFactor(meter, sighting, back ? 0 : change);
}
