import { ruleAppliesToStation } from '../../rules/rule-applies.js';
import type { WateringRule } from '../../rules/watering-rule.js';
import type { WaterWindow, ZoneToPlan } from '../plan-input.js';

const DAY = 1440;

/** Hours in which everything on a day has to run: first minute after midnight and how many. [min] */
export interface OpenHours {
  readonly from: number;
  readonly minutes: number;
}

/**
 * The longest unbroken hours of the water window that no rule blocks.
 *
 * Where any rule counts days, minutes a day or days a week, the hours lie within one date: what runs after midnight would be another day's
 * watering. Hours that are blocked for one zone are kept free of all.
 *
 * @param window - The hours that the organization waters in. [min]
 * @param rules - Rules that meet the place in the month. [code]
 * @param zones - The zones of the controller. [code]
 * @param oneDate - Whether the hours have to lie within one date anyway. [–]
 * @returns The hours; none where rules block them all. [min]
 */
export function openHours(window: WaterWindow, rules: readonly WateringRule[], zones: readonly ZoneToPlan[], oneDate = false): OpenHours {
  const met = rules.filter((rule) => zones.some((zone) => ruleAppliesToStation(rule, zone)));
  const byDate =
    oneDate ||
    met.some(
      ({ allowedDays, daysPerWeek, addressParity, maxMinutes }) =>
        allowedDays !== null || daysPerWeek !== null || addressParity !== null || maxMinutes !== null,
    );
  const until = window.until > window.from ? window.until : window.until + DAY;
  const whole: Span = [window.from, until];
  const spans: readonly Span[] =
    byDate && until > DAY
      ? [
          [window.from, DAY],
          [0, until - DAY],
        ]
      : [whole];
  const open = met.reduce<readonly Span[]>((left, rule) => left.flatMap((span) => without(span, rule)), spans);
  return open.reduce<OpenHours>((best, [from, to]) => (to - from > best.minutes ? { from: from % DAY, minutes: to - from } : best), {
    from: window.from % DAY,
    minutes: 0,
  });
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
