// Counts what was matched: recall by kind and size, false alarms a site-year, delays, the zones that were named.
import { ALARMS, HARMLESS, LEAK_ALARMS } from './families.mjs';
import { wallMs } from './sites.mjs';

const DAY_MS = 86_400_000;
/** Bands of size, as shares of the usual month: from, below. */
export const BANDS = [
  ...[
    ['under 2 %', 0, 0.02],
    ['2-5 %', 0.02, 0.05],
    ['5-10 %', 0.05, 0.1],
    ['10-25 %', 0.1, 0.25],
    ['25-100 %', 0.25, 1],
  ],
  ['over 100 %', 1, Number.POSITIVE_INFINITY],
];
export const bandOf = (share) =>
  share === null ? 'no size' : BANDS.find(([, from, below]) => Math.abs(share) >= from && Math.abs(share) < below)[0];

const ratio = (part, whole) => (whole ? part / whole : null);
const count = (list, is) => list.filter(is).length;

/** judged, found, in time: a fault that began too late to be found in time is not judged. */
export function recallOf(faults) {
  const judged = faults.filter((fault) => fault.isJudged);
  const [found, inTime] = [count(judged, (fault) => fault.isFound), count(judged, (fault) => fault.isInTime)];
  return { judged: judged.length, found, inTime, recall: ratio(found, judged.length), recallInTime: ratio(inTime, judged.length) };
}

function grouped(faults, keyOf) {
  const groups = new Map();
  for (const fault of faults) groups.set(keyOf(fault), [...(groups.get(keyOf(fault)) ?? []), fault]);
  return groups;
}
const recalls = (faults, keyOf) => Object.fromEntries([...grouped(faults, keyOf)].sort().map(([key, own]) => [key, recallOf(own)]));

function median(values) {
  if (!values.length) return null;
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.floor((sorted.length - 1) / 2)];
}

const isExcess = (fault) => fault.family.excess;
const isTenth = (fault) => fault.share !== null && Math.abs(fault.share) >= 0.1;

function delays(faults) {
  const found = faults.filter((fault) => fault.isJudged && fault.isFound);
  return {
    found: found.length,
    medianDays: median(found.map(({ days }) => days)),
    medianReadings: median(found.map(({ readings }) => readings)),
  };
}

/** Alarms that no fault explains, by kind and a site-year; and those on properties on which nothing was wrong. */
export function falseAlarms({ faults, findings }, siteYears, propertyCount) {
  const faulty = new Set(faults.filter((fault) => !HARMLESS.includes(fault.kind)).map(({ property }) => property));
  const alarms = findings.filter((finding) => finding.isAlarm && !finding.explainedBy);
  const byKind = Object.fromEntries(ALARMS.map((kind) => [kind, count(alarms, (one) => one.kind === kind)]));
  const onHealthy = count(alarms, ({ property }) => !faulty.has(property));
  const healthyYears = (siteYears * (propertyCount - faulty.size)) / propertyCount;
  const rates = { perSiteYear: ratio(alarms.length, siteYears), perHealthySiteYear: ratio(onHealthy, healthyYears) };
  return { count: alarms.length, ...rates, healthyProperties: propertyCount - faulty.size, onHealthy, byKind };
}

const ZONE_FAULTS = ['broken head', 'clogged', 'valve not opening'];

/** Zone flow changes on hourly meters, a valve that passes nothing among them: how many of those found, and of all, named the zone that changed and no other. */
function attribution(faults) {
  const zoned = faults.filter(
    (fault) => fault.zone && fault.isJudged && fault.site.isHourly && fault.site.isKnown && ZONE_FAULTS.includes(fault.kind),
  );
  const named = zoned.flatMap((fault) =>
    fault.right
      .filter((one) => one.kind === 'zone flow changed' || (one.kind === 'not delivering' && one.zones.length === 1))
      .slice(0, 1)
      .map((one) => one.zones.join() === fault.zone),
  ); // prettier-ignore
  const right = count(named, (isRight) => isRight);
  return { all: zoned.length, found: named.length, right, share: ratio(right, named.length), shareOfAll: ratio(right, zoned.length) };
}

/** Doubtful readings whose reading is one at which a register rolled over, or the first of another meter. */
function calledMisread(faults, findings, kind) {
  const those = faults.filter((fault) => fault.kind === kind);
  const isCalled = (fault) =>
    findings.some(
      (one) =>
        one.kind === 'doubtful reading' &&
        one.property === fault.property &&
        one.until &&
        !one.explainedBy &&
        Math.abs(wallMs(one.until) - wallMs(fault.starts_at.slice(0, 10))) <= DAY_MS,
    ); // prettier-ignore
  return { count: those.length, calledMisread: count(those, isCalled) };
}

function flowTests(faults, findings) {
  const wrong = faults.filter((fault) => fault.kind === 'wrong recorded flows');
  const sites = new Set(wrong.map(({ property }) => property));
  const leakAlarms = findings.filter((one) => LEAK_ALARMS.includes(one.kind) && sites.has(one.property) && !one.explainedBy);
  return { ...recallOf(wrong), leakAlarms: leakAlarms.length };
}

/** Leaks on hourly meters, above and below what the meter can show. */
function steady(faults) {
  const leaks = faults.filter((fault) => fault.kind === 'continuous leak' && fault.site.isHourly && fault.gpm !== null);
  const withFlow = leaks.map((fault) => ({ ...fault, isFound: fault.right.some((one) => one.kind === 'steady flow') }));
  const above = withFlow.filter((fault) => fault.gpm > fault.floorGpm);
  return { above: recallOf(above), below: recallOf(withFlow.filter((fault) => fault.gpm <= fault.floorGpm)) };
}

/** Recall against false alarms as the least confidence is raised: each finding is heard only at or above it. */
function curve({ faults, findings }, siteYears) {
  const levels = [0, 0.5, 0.9, 0.95, 0.975, 0.99, 0.995, 0.999, 0.9999, 1];
  const judged = faults.filter((fault) => fault.isJudged && isExcess(fault) && isTenth(fault) && !fault.isUnseen);
  return levels.map((level) => {
    const heard = (finding) => finding.confidence === null || finding.confidence >= level;
    const alarms = count(findings, (one) => one.isAlarm && !one.explainedBy && heard(one));
    const found = count(judged, (fault) => fault.right.some(heard));
    return { leastConfidence: level, recall: ratio(found, judged.length), falseAlarmsPerSiteYear: ratio(alarms, siteYears) };
  });
}

/** An organization is told of no less than this, unless it asks. [gal a month] */
const TOLD_FROM_GALLONS = 2000;

/** Of what was not found in time: how much never was, and how much is less than an organization is told of. */
function missedOf(faults) {
  const missed = faults.filter((fault) => fault.isJudged && !fault.isInTime);
  const never = count(missed, (fault) => !fault.isFound);
  return { count: missed.length, never, small: count(missed, ({ gallons }) => gallons !== null && gallons < TOLD_FROM_GALLONS) };
}

/**
 * @param match what `matched` gave, of one fleet or several together
 * @param {{siteYears: number, properties: number}} size what the findings speak of
 */
export function tally(match, { siteYears, properties }) {
  const { faults, findings } = match;
  const alarming = faults.filter((fault) => fault.family.right.length && fault.kind !== 'missed pause');
  const excess = alarming.filter(isExcess);
  const large = excess.filter(isTenth);
  const seen = large.filter((fault) => !fault.isUnseen);
  return {
    keepsHistory: match.keepsHistory,
    properties,
    siteYears,
    findings: findings.length,
    unexplainedUse: recalls(seen, (fault) => fault.site.group),
    belowMeter: recallOf(large.filter((fault) => fault.isUnseen)),
    missed: missedOf(seen),
    byKindAndBand: recalls(alarming, (fault) => `${fault.kind} | ${bandOf(fault.share)}`),
    byGroupAndBand: recalls(excess, (fault) => `${fault.site.group} | ${bandOf(fault.share)}`),
    delays: Object.fromEntries([...grouped(large, (fault) => fault.site.group)].sort().map(([group, own]) => [group, delays(own)])),
    falseAlarms: falseAlarms(match, siteYears, properties),
    attribution: attribution(faults),
    steady: steady(faults),
    misreads: recalls(
      faults.filter((fault) => fault.kind === 'misread'),
      (fault) => fault.note || 'any',
    ), // prettier-ignore
    allMisreads: recallOf(faults.filter((fault) => fault.kind === 'misread')),
    rollovers: calledMisread(faults, findings, 'rollover'),
    swaps: calledMisread(faults, findings, 'swap'),
    flowTests: flowTests(faults, findings),
    wateredInRain: recallOf(faults.filter((fault) => fault.kind === 'missed pause')),
    curve: curve(match, siteYears),
  };
}
