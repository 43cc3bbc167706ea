import { ruleAppliesToStation } from '../../rules/rule-applies.js';
import type { WateringRule } from '../../rules/watering-rule.js';
import type { WaterWindow, ZoneToPlan } from '../plan-input.js';

const DAY = 1440;
const DUST = 1e-9;
/** Starts a day that are worth a look. */
export const MOST_STARTS = 3;

/** Unbroken hours: minutes after the first of the open hours, and how many. [min] */
export interface OpenPiece {
  readonly after: number;
  readonly minutes: number;
}

/**
 * Hours in which everything on a day has to run, in pieces: first minute after midnight, minutes of all pieces, and the longest start of a program
 * that has one, two, three of them, each within one piece.
 *
 * They are a date's, with what is open of it before and after its night, or a night's that reaches over midnight. [min]
 */
export interface OpenHours {
  readonly from: number;
  readonly minutes: number;
  readonly longest: readonly number[];
  /** The pieces as they lie on one date, from midnight on, and the longest starts that all have to begin on it. [min] */
  readonly ofDate: readonly OpenPiece[];
  readonly longestOfDate: readonly number[];
  readonly pieces: readonly OpenPiece[];
}

/**
 * The hours of the water window that no rule blocks.
 *
 * Where any rule counts days, minutes a day or days a week, the hours are those of one date, from midnight to midnight: a run belongs to the
 * date on which it begins, and what begins after midnight would be another day's watering. Else they are a night's. Hours that are blocked for
 * one zone are kept free of all.
 *
 * @param window - The hours that the organization waters in. [min]
 * @param rules - Rules that meet the place in the month. [code]
 * @param zones - The zones of the controller. [code]
 * @returns The hours; none where rules block them all. [min]
 */
export function openHours(window: WaterWindow, rules: readonly WateringRule[], zones: readonly ZoneToPlan[]): OpenHours {
  const met = rules.filter((rule) => zones.some((zone) => ruleAppliesToStation(rule, zone)));
  const byDate = met.some(
    ({ allowedDays, daysPerWeek, addressParity, maxMinutes }) =>
      allowedDays !== null || daysPerWeek !== null || addressParity !== null || maxMinutes !== null,
  );
  const until = window.until > window.from ? window.until : window.until + DAY;
  const spans = byDate && until > DAY ? spansOfDate(window.from, until - DAY) : [[window.from, until] as const];
  const open = met.reduce<readonly Span[]>((left, rule) => left.flatMap((span) => without(span, rule)), spans);
  const first = open[0]?.[0] ?? window.from;
  const pieces = open.map(([from, to]) => ({ after: from - first, minutes: to - from }));
  const ofDate = onOneDate(open);
  const longest = (of: readonly OpenPiece[]) => Array.from({ length: MOST_STARTS }, (_, at) => longestStart(of, at + 1));
  return {
    from: first % DAY,
    minutes: pieces.reduce((sum, { minutes }) => sum + minutes, 0),
    longest: longest(pieces),
    pieces,
    ofDate,
    longestOfDate: longest(ofDate),
  };
}

// What a night has after midnight comes first on its date. Minutes after midnight.
function onOneDate(spans: readonly Span[]): readonly OpenPiece[] {
  const cut = (begin: number) =>
    spans.flatMap(([from, to]) => {
      const [first, last] = [Math.max(from, begin), Math.min(to, begin + DAY)];
      return last > first ? [{ after: first - begin, minutes: last - first }] : [];
    });
  return [...cut(DAY), ...cut(0)];
}

// The longest start of which the pieces hold so many.
function longestStart(pieces: readonly OpenPiece[], starts: number): number {
  const times = (length: number) => pieces.reduce((sum, { minutes }) => sum + Math.floor(minutes / length + DUST), 0);
  const lengths = pieces.flatMap(({ minutes }) => Array.from({ length: starts }, (_, at) => minutes / (at + 1)));
  return lengths.reduce((most, length) => (length > most && times(length) >= starts ? length : most), 0);
}

function spansOfDate(from: number, until: number): readonly Span[] {
  if (until >= from) return [[0, DAY]];
  return until > 0
    ? [
        [0, until],
        [from, DAY],
      ]
    : [[from, DAY]];
}

type Span = readonly [number, number];

function without(span: Span, { blockedFrom, blockedUntil }: WateringRule): readonly Span[] {
  if (blockedFrom === null && blockedUntil === null) return [span];
  const from = blockedFrom ?? 0;
  const end = blockedUntil ?? DAY;
  const until = end > from ? end : end + DAY;
  return [-DAY, 0, DAY].reduce<readonly Span[]>((left, shift) => left.flatMap((each) => cut(each, [from + shift, until + shift])), [span]);
}

function cut([from, until]: Span, [begin, end]: Span): readonly Span[] {
  if (end <= from || begin >= until) return [[from, until]];
  const pieces: Span[] = [
    [from, Math.min(begin, until)],
    [Math.max(end, from), until],
  ];
  return pieces.filter(([a, b]) => b > a);
}
