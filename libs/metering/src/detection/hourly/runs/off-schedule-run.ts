import { dateOfDayNumber, weekdayOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import { daysPerMonth, type Sighting } from '../episode-of-sighting.js';
import type { ObservedMeter } from '../steps/observed-meter.js';
import { handLitresAWeek } from '../steps/hand-litres.js';
import { quantile } from '../steps/robust-spread.js';
import { leastRunFlow, type WaterCluster, waterClusters } from './water-clusters.js';
import { valueAt } from '../steps/value-at.js';

const MINUTES_PER_DAY = 1440;
const MINUTES_PER_HOUR = 60;
/** Hours of the night, by the clock: crews and hoses are at work by day. Common practice, no source. */
const NIGHT_FROM = 21 * MINUTES_PER_HOUR;
const NIGHT_UNTIL = 6 * MINUTES_PER_HOUR;
/** Days within which water at the same clock time is repeated: a weekly program, and a day. */
const REPEATED_WITHIN_DAYS = 8;
/** Same clock time: a timer is exact, usage is told by steps. [min] */
const SAME_CLOCK_MINUTES = 15;
/** Litres alike: within this share of each other. */
const ALIKE = 0.75;
/** Days at the same time and with alike litres: at night two, by day three, where people may do alike. Common practice, no source. */
const DAYS_AT_NIGHT = 2;
const DAYS_BY_DAY = 3;
/** By day two are enough where both are as exact as a timer is. */
const EXACT_DAYS = 2;
const EXACTLY_ALIKE = 0.96;
/** And each makes so many steps of the register that this can be told: one of them is no more than what they may differ by. */
const EXACT_STEPS = 25;
/** And each is this share of a watering: a hose may run twice alike. */
const EXACT_SHARE = 0.1;
/** A hand that waters each week may do so twice as much on a day as its whole week's record. Common practice, no source. */
const OF_HAND_WEEK = 1.5;
/** Once is enough from these shares of the usual day. */
const SIZE_AT_NIGHT = 0.25;
const SIZE_BY_DAY = 0.5;
/** And from these shares of a watering of ten minutes of every zone: a crew that walks the zones passes a fifth of it. Common practice, no source. */
const OF_WATERING_AT_NIGHT = 0.1;
const OF_WATERING_BY_DAY = 0.35;
/** By day people draw water of a mixed meter: less than this share of a watering may be theirs. */
const LEAST_SHARE_MIXED = 0.2;
const FULL_WATERING_MINUTES = 10;
/** Less than this share of a full watering, and of a usual day, is nobody's concern. */
const LEAST_SHARE = 0.04;
/** Longer water that runs into a scheduled run is a leak's, not a run's. [h] */
const LONGEST_INTO_RUN_HOURS = 6;
/** It has ended when it stays away this many times its longest pause, and this many days at least; what was seen once, a week and a day: programs run by the week. */
const PAUSES_TO_END = 2;
const LEAST_DAYS_TO_END = 3;

/** What is followed of water outside of every run. */
export interface OffSchedule {
  recent: WaterCluster[];
  matched: WaterCluster[];
  open: Sighting | null;
  readonly told: Sighting[];
}

/**
 * Nothing followed yet.
 *
 * @returns No water. [–]
 */
export function noOffSchedule(): OffSchedule {
  return { recent: [], matched: [], open: null, told: [] };
}

/**
 * Follows the water of a day outside of every run: repeated at the same time of the clock, or as much as a watering.
 *
 * @param meter - The meter; the litres of a finding are claimed. [code]
 * @param off - What is followed. [code]
 * @param day - The day, from 0. [–]
 * @param limit - Smallest flow that the meter shows. [L/min]
 * @param usual - Litres of a usual day, NaN where not known. [L/d]
 * @returns True when a finding opened. [–]
 */
export function followOffSchedule(meter: ObservedMeter, off: OffSchedule, day: number, limit: number, usual: number): boolean {
  if (meter.kinds[day] === 'not known' || !meter.shiftsLearnt) return false;
  const watering = fullWatering(meter);
  const sizes = { watering, usual: usual || watering };
  const clusters = waterClusters(meter, day, leastRunFlow(meter, limit)).filter((cluster) => mayBeRun(meter, cluster, sizes));
  let opened = false;
  for (const cluster of clusters) {
    if (off.open) follow(meter, off, cluster);
    else opened = judge(meter, off, cluster, sizes) || opened;
  }
  off.recent = [...off.recent, ...clusters].filter((cluster) => cluster.day > day - REPEATED_WITHIN_DAYS);
  if (off.open) endWhereAway(meter, off, day);
  return opened;
}

// Litres of a watering of every zone.
function fullWatering({ flows }: ObservedMeter): number {
  return flows.reduce((sum, flow) => sum + (flow || 0), 0) * FULL_WATERING_MINUTES;
}

function mayBeRun(meter: ObservedMeter, cluster: WaterCluster, { watering, usual }: Sizes): boolean {
  const ofPeople = meter.evidence.kind === 'mixed' && !isNight(cluster) ? LEAST_SHARE_MIXED * Math.max(watering, usual) : 0;
  if (cluster.litres < ofPeople) return false;
  const hours = ((cluster.untilStep - cluster.fromStep) * meter.usage.stepMinutes) / MINUTES_PER_HOUR;
  if (!isNight(cluster) && cluster.litres <= OF_HAND_WEEK * handLitresAWeek(meter, cluster.day)) return false;
  const likeRun = cluster.endedAlone || (cluster.beganAlone && hours <= LONGEST_INTO_RUN_HOURS);
  return likeRun && cluster.litres >= LEAST_SHARE * Math.min(watering, usual);
}

function isNight({ clockMinute }: WaterCluster): boolean {
  return clockMinute >= NIGHT_FROM || clockMinute < NIGHT_UNTIL;
}

function alike(meter: ObservedMeter, one: WaterCluster, other: WaterCluster): boolean {
  const apart = Math.abs(one.clockMinute - other.clockMinute);
  const sameClock = Math.min(apart, MINUTES_PER_DAY - apart) <= Math.max(SAME_CLOCK_MINUTES, meter.usage.stepMinutes);
  const [less, more] = [Math.min(one.litres, other.litres), Math.max(one.litres, other.litres)];
  return sameClock && less >= ALIKE * more;
}

// A timer's run begins in the same step of each day.
function isExactly(one: WaterCluster, other: WaterCluster): boolean {
  const isAlike = Math.min(one.litres, other.litres) >= EXACTLY_ALIKE * Math.max(one.litres, other.litres);
  return one.clockMinute === other.clockMinute && isAlike;
}

interface Sizes {
  readonly watering: number;
  readonly usual: number;
}

function isLarge(cluster: WaterCluster, { watering, usual }: Sizes): boolean {
  const [ofUsual, ofWatering] = isNight(cluster) ? [SIZE_AT_NIGHT, OF_WATERING_AT_NIGHT] : [SIZE_BY_DAY, OF_WATERING_BY_DAY];
  return cluster.beganAlone && cluster.endedAlone && cluster.litres >= Math.max(ofUsual * usual, ofWatering * watering);
}

function judge(meter: ObservedMeter, off: OffSchedule, cluster: WaterCluster, sizes: Sizes): boolean {
  const matches = off.recent.filter((past) => past.day !== cluster.day && alike(meter, past, cluster));
  const days = new Set(matches.map(({ day }) => day)).size + 1;
  const least = Math.max(EXACT_SHARE * Math.min(sizes.watering, sizes.usual), EXACT_STEPS * (meter.usage.resolutionLitres ?? 0));
  const exact = cluster.litres >= least && matches.some((past) => isExactly(past, cluster));
  const fewest = isNight(cluster) ? DAYS_AT_NIGHT : exact ? EXACT_DAYS : DAYS_BY_DAY;
  if (days < fewest && !isLarge(cluster, sizes)) return false;
  const { firstMinute, stepMinutes } = meter.usage;
  off.matched = [...matches, cluster];
  off.matched.forEach((one) => {
    claim(meter, one);
  });
  const first = off.matched[0] ?? cluster;
  off.open = {
    kind: 'off-schedule run',
    code: 'off-schedule run',
    zones: [],
    ofZone: false,
    fromMinute: firstMinute + first.fromStep * stepMinutes,
    openedMinute: firstMinute + (cluster.untilStep + (cluster.endedAlone ? 1 : 0)) * stepMinutes,
    clearedMinute: null,
    litres: null,
    sdLitres: null,
    costs: true,
    confidence: 1,
    evidence: {},
    details: {},
  };
  off.told.push(off.open);
  tell(meter, off, off.open);
  return true;
}

function claim(meter: ObservedMeter, { fromStep, untilStep }: WaterCluster): void {
  for (let step = Math.max(0, fromStep - 1); step <= untilStep; step++) {
    if (!meter.touched[step]) meter.claimed[step] = Math.max(0, (meter.usage.litres[step] || 0) - valueAt(meter.indoor, step));
  }
}

function follow(meter: ObservedMeter, off: OffSchedule, cluster: WaterCluster): void {
  if (!off.open || !off.matched.some((past) => alike(meter, past, cluster))) return;
  off.matched.push(cluster);
  claim(meter, cluster);
  tell(meter, off, off.open);
}

function longestPause(matched: readonly WaterCluster[]): number {
  return matched.reduce((most, { day }, at) => Math.max(most, at > 0 ? day - (matched[at - 1]?.day ?? day) : 0), 1);
}

function endWhereAway(meter: ObservedMeter, off: OffSchedule, day: number): void {
  const last = off.matched[off.matched.length - 1]?.day ?? day;
  const isOnce = new Set(off.matched.map((cluster) => cluster.day)).size < 2;
  const least = isOnce ? REPEATED_WITHIN_DAYS : LEAST_DAYS_TO_END;
  if (!off.open || day - last < Math.max(least, PAUSES_TO_END * longestPause(off.matched))) return;
  off.open.clearedMinute = meter.evidence.midnights[day + 1] ?? 0;
  off.open = null;
  off.matched = [];
}

function tell({ evidence, usage }: ObservedMeter, { matched }: OffSchedule, sighting: Sighting): void {
  const litres = matched.map((cluster) => cluster.litres);
  const days = [...new Set(matched.map(({ day }) => evidence.firstDay + day))];
  const span = matched.length > 1 ? valueAt(days, days.length - 1) - valueAt(days, 0) : 0;
  const perDay = span > 0 ? litres.slice(1).reduce((sum, value) => sum + value, 0) / span : null;
  const minutes = matched.map(({ fromStep, untilStep }) => (untilStep - fromStep) * usage.stepMinutes);
  const [total, typicalMinutes] = [litres.reduce((sum, value) => sum + value, 0), quantile(minutes, 0.5)];
  sighting.litres = perDay === null ? total : perDay * daysPerMonth;
  sighting.evidence = {
    dates: days.map(dateOfDayNumber),
    litres,
    schedule: {
      clockMinute: quantile(
        matched.map(({ clockMinute }) => clockMinute),
        0.5,
      ),
      minutes: typicalMinutes,
      weekdays: [...new Set(days.map(weekdayOfDayNumber))].sort((a, b) => a - b),
      daysApart: longestPause(matched),
    },
  };
  sighting.details = {
    times: days.length,
    clockTime: clockTimeOf(matched[matched.length - 1]?.clockMinute ?? 0),
    minutes: typicalMinutes,
    litresEach: quantile(litres, 0.5),
    litresPerMinute: quantile(litres, 0.5) / typicalMinutes,
    lookAt: 'controller programs and clock',
  };
}

const clockTimeOf = (minute: number): string =>
  [Math.floor(minute / MINUTES_PER_HOUR), Math.floor(minute % MINUTES_PER_HOUR)].map((part) => `${part}`.padStart(2, '0')).join(':');
