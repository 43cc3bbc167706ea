// Which finding belongs to which fault: the same property, a kind that is right for it, and opened between its start and its end with some grace.
import { ALARMS, familyOf } from './families.mjs';
import { minimumTestFlow, steadyFloor, wallMs } from './sites.mjs';

const DAY_MS = 86_400_000;
const HOURLY_DAYS = 2;
const READINGS = 2;
/** A fault is news for this long after it ended where nobody reads any more. */
const LONGEST_GRACE_DAYS = 75;
/** A slow leak counts from when it has grown to this share of the usual month, and to the meter's minimum test flow. */
const GROWN = 0.1;
/** When findings are kept only as they stand at the end, faults that ended earlier than this before it are out of view. */
const VIEW_DAYS = 45;
/** Where nobody reads any more, even the newest findings are old: a history has more of them. */
const EARLY_SHARE = 0.1;

/** Leaks that flow alone for most of the time: below its minimum test flow a meter need not register them, and no judge can see them. */
const UNSEEN = ['continuous leak', 'slow leak'];

const readingAfter = (site, from, nth) => site.readings.filter((at) => at > from)[nth - 1] ?? null;
/** The reading itself is the first: another meter may have been read some minutes before. */
const sinceReading = (site, from) => site.readings.filter((at) => at >= from - DAY_MS / 2);

/** By when a fault should be found: two days by the hour, else the second reading after its start; null where the fleet ends before. */
function dueAt(fault, site, last) {
  // A habit shows over months: it is never late.
  if (fault.kind === 'wrong recorded flows') return last;
  // Before its feed begins a site is read, and judged by its readings.
  if (site.isHourly && fault.kind !== 'misread' && fault.from >= site.fedFrom) {
    const due = fault.from + HOURLY_DAYS * DAY_MS;
    return due <= last ? due : null;
  }
  // A misread is itself a reading; the next one shows it.
  const read = fault.kind === 'misread' ? (sinceReading(site, fault.from)[READINGS - 1] ?? null) : readingAfter(site, fault.from, READINGS);
  // Bills have days, not hours: the day of the reading counts as a whole.
  return read === null ? null : read + DAY_MS;
}

function graceEnd(fault, site, last) {
  if (fault.until === null) return last + DAY_MS;
  const longest = fault.until + LONGEST_GRACE_DAYS * DAY_MS;
  return Math.min(longest, (readingAfter(site, fault.until, READINGS) ?? longest) + DAY_MS);
}

/** A leak that grows, from when it is a tenth of the usual month and no less than the meter must register. */
function grownFrom(row, share, meter) {
  const days = /grows for (\d+) days/.exec(row.note)?.[1];
  const begun = wallMs(row.starts_at);
  if (!days || !share) return begun;
  const registered = meter && Number(row.gpm) > 0 ? minimumTestFlow(meter) / Number(row.gpm) : 0;
  return begun + Math.min(1, Math.max(GROWN / Math.abs(share), registered)) * Number(days) * DAY_MS;
}

/** A row of truth.csv, ready to be matched. */
export function faultOf(row, sites, last) {
  const site = sites.get(row.property);
  if (!site) throw new Error(`truth.csv names the property "${row.property}", which properties.csv does not have.`);
  const share = row.share_of_usual_month === '' ? null : Number(row.share_of_usual_month);
  const until = row.ends_at === '' ? null : wallMs(row.ends_at);
  const meter = site.meters.findLast((one) => one.meter === row.meter) ?? site.meters.at(-1);
  const fault = {
    ...row,
    share,
    begun: wallMs(row.starts_at),
    from: grownFrom(row, share, meter),
    until,
    site,
    family: familyOf(row.kind),
  };
  fault.gpm = row.gpm === '' ? null : Number(row.gpm);
  fault.floorGpm = meter ? steadyFloor(meter) : null;
  fault.isUnseen = UNSEEN.includes(row.kind) && fault.gpm !== null && meter !== undefined && fault.gpm < minimumTestFlow(meter);
  fault.due = dueAt(fault, site, last);
  fault.graceUntil = graceEnd(fault, site, last);
  return fault;
}

/** A row of findings.csv, ready to be matched. */
export function findingOf(row) {
  return {
    ...row,
    openedAt: wallMs(row.opened_at),
    confidence: row.confidence === '' ? null : Number(row.confidence),
    zones: row.zone ? row.zone.split('; ') : [],
    isAlarm: ALARMS.includes(row.kind),
  };
}

const isInTime = (finding, fault) => finding.openedAt >= fault.begun && finding.openedAt <= fault.graceUntil;

/** Whether a kind of finding is right for a fault; overwatered only where unexplained use cannot be known. */
export function isRight(finding, { family, site }) {
  return family.right.includes(finding.kind) || (family.excess && !site.isKnown && finding.kind === 'overwatered');
}
const isFair = (finding, { family }) => family.fair.includes(finding.kind);

/** Misreads of the same meter are told apart by the reading: the finding must end, or open, near it. */
function isSameReading(finding, fault) {
  if (fault.kind !== 'misread' || finding.kind !== 'doubtful reading' || !finding.until) return true;
  const near = sinceReading(fault.site, fault.from).slice(0, READINGS);
  return near.some((at) => Math.abs(wallMs(finding.until) - at) <= DAY_MS * 1.5);
}

/** Findings are a history when many were opened long before the end; else they are how things stood at the end. */
export function isHistory(findings, last) {
  const early = findings.filter((finding) => finding.openedAt < last - 2 * VIEW_DAYS * DAY_MS).length;
  return early > EARLY_SHARE * findings.length;
}

/** A cause never opens two findings: a second fault says nothing of its own while an earlier one is found that the same kinds are right for. */
const isHidden = (fault, faults) =>
  faults.some(
    (earlier) =>
      earlier !== fault &&
      earlier.property === fault.property &&
      earlier.isFound &&
      earlier.begun < fault.begun &&
      (earlier.until === null || earlier.until > fault.begun) &&
      earlier.right[0].openedAt < fault.begun &&
      earlier.right.some(({ kind }) => fault.family.right.includes(kind)),
  ); // prettier-ignore

/**
 * @param {{truth: object[], findings: object[], sites: Map<string, object>, last: number, history?: boolean}} input
 * @returns faults with the finding that found each, and findings with the fault that explains each
 */
export function matched({ truth, findings, sites, last, history }) {
  const found = findings.map(findingOf);
  const keepsHistory = history ?? isHistory(found, last);
  const faults = truth.map((row) => faultOf(row, sites, last));
  for (const fault of faults) {
    const own = found.filter((one) => one.property === fault.property && isInTime(one, fault) && isSameReading(one, fault));
    const right = own.filter((one) => isRight(one, fault)).sort((one, other) => one.openedAt - other.openedAt);
    for (const one of own) if (isRight(one, fault) || isFair(one, fault)) one.explainedBy ??= fault;
    const inView = keepsHistory || fault.until === null || fault.until >= last - VIEW_DAYS * DAY_MS;
    Object.assign(fault, { right, isFound: right.length > 0, isJudged: inView && fault.due !== null && fault.family.right.length > 0 });
    fault.isInTime = right.some((one) => one.openedAt <= fault.due);
    fault.days = right.length ? (right[0].openedAt - fault.from) / DAY_MS : null;
    fault.readings = right.length ? fault.site.readings.filter((at) => at > fault.from && at <= right[0].openedAt).length : null;
  }
  for (const fault of faults) fault.isJudged &&= !isHidden(fault, faults);
  return { faults, findings: found, keepsHistory };
}
