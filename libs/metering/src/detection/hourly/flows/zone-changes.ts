import type { Sighting } from '../episode-of-sighting.js';
import type { ObservedMeter } from '../steps/observed-meter.js';
import type { RunMinutes } from '../steps/run-minutes.js';
import { type ChangeScore, changeScores } from './change-scores.js';
import { type DayEquations, dayEquations } from './day-equations.js';
import { sameDesign } from './same-design.js';
import { lastRunMinute, type NamedChange, tellChange, zoneSighting } from './zone-sighting.js';
import { valueAt } from '../steps/value-at.js';

/** Days that ran over which a change is looked for, the newest of them the last. */
const WINDOWS = [3, 4, 6, 9, 13] as const;
/**
 * A change must be this many standard deviations: a year has some 150 days that ran, 12 zones and two or three independent windows, 5,000
 * chances; a normal quantity passes 4.5 in one of 150,000: one in thirty years. What is learnt of pressure and clocks is not quite normal.
 */
const DECISION = 4.5;
/** Where the steps hardly tell zones apart, or another change is open whose level is not sure, a fault of the model is likelier than chance. */
const UNSURE_DECISION = 6;
const SURE_SD = 0.1;
/** Smaller changes are not told: half of the 25 % that is to be found, and more than what seasons do to pressure. */
const LEAST_CHANGE = 0.15;
/** Days that ran from which flows are learnt, before a change is looked for. */
const LEAST_LEARNT = 8;
/** Each day alone must say at least this share of the change, all but one day in four: no single day makes a change. */
const SAYS_SHARE = 0.3;
const MOST_SILENT_SHARE = 0.25;
/** Other zones are named as well whose squares are short by this at most: twenty times less likely, e³. */
const ALSO_LIKELY = 6;
/** Another zone that explains at least this share of the squares is a rival. Common practice, no source. */
const RIVAL = 0.85;
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
    const squares = Math.max(...squaresOfFree(changes, scores));
    if (squares > DECISION ** 2 && squares > (best?.squares ?? 0)) best = { squares, days, scores };
  }
  return best;
}

// Squares that each change explains, none where the change is open already.
function squaresOfFree({ open }: ZoneChanges, scores: readonly ChangeScore[]): readonly number[] {
  return scores.map(({ change, sd }, place) => (open.has(place) ? 0 : (change / sd) ** 2));
}

function nameCause(meter: ObservedMeter, changes: ZoneChanges, { days, scores }: ScoredWindow, day: number): boolean {
  const all = scores.length - 1;
  const squares = squaresOfFree(changes, scores);
  const best = squares.indexOf(Math.max(...squares));
  const score = scores[best] as ChangeScore;
  const everywhere = best === all && all > 1;
  const zones = everywhere ? [...meter.flows.keys()] : likelyZones(squares, best);
  if (valueAt(squares, best) < (isSure(changes, squares, best, score.sd) ? DECISION : UNSURE_DECISION) ** 2) return false;
  // More from all zones at once is no zone's doing: it is judged as unexplained use of the meter.
  if ((everywhere && score.change > 0) || !saidByDays(meter, days, best, score.change)) return false;
  open(meter, changes, { zones, everywhere, score, day }, days);
  return true;
}

function open(
  meter: ObservedMeter,
  changes: ZoneChanges,
  named: Omit<NamedChange, 'firstDay' | 'runDays'>,
  days: readonly DayEquations[],
): void {
  const sighting = zoneSighting(meter, { ...named, firstDay: days[0]?.day ?? named.day, runDays: days.length });
  changes.told.push(sighting);
  changes.open.set(named.everywhere ? meter.flows.length : valueAt(named.zones, 0), sighting);
  setFactor(meter, sighting, named.score.change);
  believeSince(meter, changes, days);
}

// The flows now believed held on these days as well.
function believeSince(meter: ObservedMeter, changes: ZoneChanges, days: readonly DayEquations[]): void {
  const past = new Set(days.map(({ day }) => day));
  for (const day of past) meter.factorOfDay.set(meter.factors, day * meter.flows.length);
  changes.equations = changes.equations.map((one) => (past.has(one.day) ? dayEquations(meter, one.day) : one));
}

// The steps tell the change well and apart from that of any other zone, and no other change is open.
function isSure({ open: others }: ZoneChanges, squares: readonly number[], best: number, sd: number): boolean {
  const all = squares.length - 1;
  const rivals = squares.filter((value, zone) => zone !== best && zone < all && value >= RIVAL * valueAt(squares, best));
  return others.size === 0 && sd <= SURE_SD && (best === all || rivals.length === 0);
}

function likelyZones(squares: readonly number[], best: number): readonly number[] {
  const all = squares.length - 1;
  const first = best === all ? 0 : best;
  const least = Math.max(1, valueAt(squares, best) - ALSO_LIKELY);
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
  believeSince(meter, changes, recent);
}
