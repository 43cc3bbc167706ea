import type { Sighting } from '../episode-of-sighting.js';
import { isAboutSettings } from '../steps/about-settings.js';
import type { ObservedMeter, RunMinutes } from '../steps/observed-meter.js';
import { type ChangeScore, type ChangeScores, changeScores } from './change-scores.js';
import { isPossible, logOddsOf } from './likely-change.js';
import { type DayEquations, dayEquations } from './day-equations.js';
import { keepScores, type PastScores, scalesOf } from './past-scores.js';
import { sameDesign } from './same-design.js';
import { lastRunMinute, type NamedChange, tellChange, zoneSighting } from './zone-sighting.js';
import { valueAt } from '../steps/value-at.js';

/**
 * Days that ran over which a change is looked for, the newest of them the last, and how many standard deviations a change must be.
 *
 * A year has some 150 days that ran, 12 zones and two or three independent windows, 5,000 chances; a normal quantity passes 5 in one of
 * 1.7 million: one in three hundred years. What is learnt of pressure and clocks is not quite normal. One or two days may also be somebody's work on the
 * zones, so that these must be beyond any doubt of the model; zones that run every other day are not told of in two days else.
 */
const WINDOWS: readonly (readonly [days: number, decision: number])[] = [
  [1, 8],
  [2, 6.5],
  [3, 5.5],
  [4, 5],
  [6, 5],
  [9, 5],
  [13, 5],
];
/** Days from which a change of any size is told; in fewer only one of a quarter of the flow. */
const MANY_DAYS = 3;
const LEAST_AT_ONCE = 0.25;
/** On such days what flows beside the runs must be less than this share of theirs. Common practice, no source. */
const CALM_SHARE = 0.05;
/** Where the steps hardly tell zones apart, or another change is open whose level is not sure, a fault of the model is likelier than chance. */
const UNSURE_DECISION = 6.5;
const SURE_SD = 0.1;
/** So probable among those that explain about as much, a zone is sure to be the one. Common practice, no source. */
const SURE = 0.8;
/** Smaller changes are not told: less than the 25 % that is to be found, and more than what seasons do to pressure. */
const LEAST_CHANGE = 0.18;
/** All zones together must lack a quarter: pressure of the main moves by less from season to season. Common practice, no source. */
const LEAST_LACK = 0.25;
/** Days that ran from which flows are learnt, before a change is looked for. */
const LEAST_LEARNT = 8;
/** A lack of all zones, or a change in a day, is told when flows have been learnt from more: at first it is the record that is off. */
const WELL_LEARNT = 20;
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
const BACK_WITHIN_OF_ALL = 0.18;

/** What is followed of the zones of a meter: equations of days that ran, and changes that are open by place (all zones: the last). */
export interface ZoneChanges {
  equations: DayEquations[];
  /** Days up to this one are those from which flows were learnt, or have got another explanation. */
  learntUntil: number;
  learntDays: readonly number[];
  readonly past: PastScores;
  readonly open: Map<number, Sighting>;
  readonly told: Sighting[];
}

/**
 * Nothing followed yet.
 *
 * @returns No day. [–]
 */
export function noZoneChanges(): ZoneChanges {
  return { equations: [], learntUntil: Number.POSITIVE_INFINITY, learntDays: [], past: new Map(), open: new Map(), told: [] };
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
  /** In the scale of each zone's own past: whether it changed at all. */
  readonly scores: readonly ChangeScore[];
  /** In one scale, none below what is assumed: which cause is the likeliest. */
  readonly compared: ChangeScores;
  readonly decision: number;
}

function likeliestWindow(meter: ObservedMeter, changes: ZoneChanges, alike: boolean): ScoredWindow | null {
  const free = changes.equations.filter((one) => one.day > changes.learntUntil);
  let best: ScoredWindow | null = null;
  for (const [window, decision] of WINDOWS) {
    if (free.length < window) break;
    const days = free.slice(-window);
    if (window < MANY_DAYS && !(mayBeAtOnce(meter, changes) && days.every(({ day }) => isCalm(meter, day) && !isAboutSettings(meter, day))))
      continue;
    const { scores, compared } = inOwnScale(changes, window, changeScores(meter, days, alike), alike);
    const squares = Math.max(...squaresOfFree(changes, scores));
    if (squares > decision ** 2 && squares > (best?.squares ?? 0)) best = { squares, days, scores, compared, decision };
  }
  return best;
}

// A zone whose scores of the past went beyond chance must go further, and one whose scores stayed far within it less far: while runs are as long as then.
function inOwnScale(
  { past }: ZoneChanges,
  window: number,
  { scores, whileRunning }: ChangeScores,
  alike: boolean,
): Pick<ScoredWindow, 'scores' | 'compared'> {
  const scales = scalesOf(past, window, scores.length).map((scale) => (alike ? scale : Math.max(1, scale)));
  keepScores(past, window, scores);
  const together = Math.max(1, Math.sqrt(scales.reduce((sum, scale) => sum + scale ** 2, 0) / scales.length));
  const inScale = ({ change, sd }: ChangeScore, scale: number): ChangeScore => ({ change, sd: sd * scale });
  return {
    scores: scores.map((score, place) => inScale(score, valueAt(scales, place))),
    compared: { scores: scores.map((score) => inScale(score, together)), whileRunning: inScale(whileRunning, together) },
  };
}

// One or two days are enough only where flows are known well and nobody else draws water.
function mayBeAtOnce({ ranDays, evidence }: ObservedMeter, { open: others }: ZoneChanges): boolean {
  return ranDays.length >= WELL_LEARNT && others.size === 0 && evidence.kind === 'irrigation';
}

// What flows beside the runs, a leak that is not found yet or people, flows into them too.
function isCalm({ days: { firstStep }, touched, usage, indoor, claimed, expected }: ObservedMeter, day: number): boolean {
  let [beside, runs] = [0, 0];
  for (let step = valueAt(firstStep, day); step < valueAt(firstStep, day + 1); step++) {
    runs += expected[step] || 0;
    if (!touched[step]) beside += (usage.litres[step] || 0) - valueAt(indoor, step) - valueAt(claimed, step);
  }
  return beside <= CALM_SHARE * runs;
}

// Squares that each change explains, none where the change is open already or cannot be.
function squaresOfFree({ open }: ZoneChanges, scores: readonly ChangeScore[]): readonly number[] {
  return scores.map((score, place) => (open.has(place) || !isPossible(score) ? 0 : (score.change / score.sd) ** 2));
}

// Of those that explain about as much, the likeliest by what happens to zones, and its probability among them.
function likeliest(squares: readonly number[], scores: readonly ChangeScore[]): { readonly best: number; readonly probability: number } {
  const most = Math.max(...squares);
  const all = squares.length - 1;
  if (squares[all] === most) return { best: all, probability: 1 };
  const odds = scores.map((score, zone) =>
    zone < all && valueAt(squares, zone) >= most - ALSO_LIKELY ? valueAt(squares, zone) / 2 + logOddsOf(score) : Number.NEGATIVE_INFINITY,
  );
  const first = Math.max(...odds);
  return { best: odds.indexOf(first), probability: 1 / odds.reduce((sum, own) => sum + Math.exp(own - first), 0) };
}

function nameCause(meter: ObservedMeter, changes: ZoneChanges, { days, scores, compared, decision }: ScoredWindow, day: number): boolean {
  const all = scores.length - 1;
  const squares = squaresOfFree(changes, compared.scores);
  const { best, probability } = likeliest(squares, compared.scores);
  const score = scores[best] as ChangeScore;
  const everywhere = best === all && all > 1;
  const isSure = isNamedAlone(changes, squares, { best, probability, sd: score.sd });
  const zones = everywhere ? [...meter.flows.keys()] : isSure ? [best] : likelyZones(squares, best);
  const least = isSure
    ? decision * score.sd
    : Math.max(decision, UNSURE_DECISION) * Math.max(score.sd, (compared.scores[best] as ChangeScore).sd);
  if (Math.abs(score.change) < least || !isWorth(meter, score.change, { everywhere, runDays: days.length })) return false;
  if (mayBeOfAll(compared, score.change, valueAt(squares, best))) return false;
  if (!saidByDays(meter, days, best, score.change)) return false;
  open(meter, changes, { zones, everywhere, score, day }, days);
  return true;
}

// More that all runs pass alike, or that flows while anything runs, explains about as much: it is judged as unexplained use of the meter.
function mayBeOfAll({ scores, whileRunning }: ChangeScores, change: number, most: number): boolean {
  if (change < 0 || scores.length <= 2) return false;
  const together = [scores[scores.length - 1] as ChangeScore, whileRunning].map(({ change, sd }) => (change > 0 ? (change / sd) ** 2 : 0));
  return Math.max(...together) >= Math.min(RIVAL * most, most - ALSO_LIKELY);
}

// Little less from all zones is pressure; more from all at once is no zone's doing: it is judged as unexplained use of the meter.
function isWorth(
  { ranDays }: ObservedMeter,
  change: number,
  { everywhere, runDays }: { readonly everywhere: boolean; readonly runDays: number },
): boolean {
  if (everywhere) return change <= -LEAST_LACK && ranDays.length >= WELL_LEARNT;
  return runDays >= MANY_DAYS || Math.abs(change) >= LEAST_AT_ONCE;
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

// The change is known well, no other is open, and it is hardly another zone's.
function isNamedAlone(
  { open: others }: ZoneChanges,
  squares: readonly number[],
  { best, probability, sd }: { readonly best: number; readonly probability: number; readonly sd: number },
): boolean {
  return sd <= SURE_SD && others.size === 0 && (probability >= SURE || !hasRival(squares, best));
}

// The steps hardly tell the change apart from that of another zone.
function hasRival(squares: readonly number[], best: number): boolean {
  const all = squares.length - 1;
  return best < all && squares.some((value, zone) => zone !== best && zone < all && value >= RIVAL * valueAt(squares, best));
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
        if (place === n || other === place) weight += valueAt(flows, zone) * valueAt(gram, zone * (n + 1) + other) * valueAt(flows, other);
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
  const own = changes.equations.filter(({ gram }) => valueAt(gram, zone * (zones + 2)) > 0);
  const newest = own[own.length - 1]?.day ?? 0;
  // What one or two days have said, as many may take back.
  const runs = Math.max(1, Math.min(BACK_RUNS, Number(sighting.evidence['runDays'])));
  const recent = own.slice(-runs).filter((one) => valueAt(meter.evidence.midnights, one.day) > sighting.openedMinute - 1);
  if (recent.length < runs || newest !== meter.ranDays[meter.ranDays.length - 1]) return;
  const score = changeScores(meter, recent, true).scores[place] as ChangeScore;
  const before = recent.reduce((sum, one) => sum + (meter.factorOfDay[one.day * zones + zone] ?? 1), 0) / recent.length;
  const change = before - 1 + score.change;
  const back = Math.abs(change) <= (place < zones ? BACK_WITHIN : BACK_WITHIN_OF_ALL);
  if (back) {
    sighting.clearedMinute = lastRunMinute(meter, newest);
    changes.open.delete(place);
    changes.learntUntil = Math.max(changes.learntUntil, newest);
  } else tellChange(meter, sighting, { change, sd: score.sd }, newest);
  setFactor(meter, sighting, back ? 0 : change);
  believeSince(meter, changes, recent);
}
