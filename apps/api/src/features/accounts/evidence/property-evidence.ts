import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { AccountZone } from '@rillbook/metering/account/account-input.js';
import type { EvidenceZone, MeterEvidence } from '@rillbook/metering/detection/evidence/meter-evidence.js';
import { defaultRelativeSd } from '@rillbook/metering/uncertainty/default-relative-sd.js';
import { litresFrom } from '@rillbook/units/volume.js';
import type { MeteredChain } from '../gather/account-input.js';
import type { EtoSeries } from '../gather/eto-series.js';
import type { PropertyFacts } from '../gather/property-facts.js';
import { zonesByMonth } from '../gather/zones-by-month.js';
import { feedAsReadings, wholeIntervals } from './metered-evidence.js';
import { neededByDay } from './needed-by-day.js';
import { programmedWater } from './programmed-water.js';
import type { DaySpan, PropertyCalendar } from './property-calendar.js';
import type { PropertyReplays } from './property-replays.js';
import type { ReplayedController } from './replayed-controller.js';
import { runsOfSpans } from './runs-of-spans.js';
import { withTypicalFlows } from './typical-flows.js';
import { usageSteps } from './usage-steps.js';
import { handLitresPerDay, zonesOfMeter } from './zones-of-meter.js';

/** A property's meters with all that is known of them over some days, and the replays that they share. */
export interface PropertyEvidence {
  readonly calendar: PropertyCalendar;
  readonly zones: readonly AccountZone[];
  readonly controllers: readonly ReplayedController[];
  readonly meters: readonly MeterEvidence[];
  /** gross need of a zone by day [L] */
  neededOf(zone: AccountZone): Float64Array;
}

/** What is gathered from. */
export interface EvidenceSources {
  readonly facts: PropertyFacts;
  readonly measured: readonly MeteredChain[];
  readonly eto: EtoSeries;
  readonly pricePerLitre: number | null;
}

/** Settings not known on more of the days leave programmed water not known, as in the month account. */
const MOST_UNKNOWN = 0.2;

/** Everything that is known of a property's meters over whole local days. */
export function propertyEvidence(sources: EvidenceSources, { calendar, controllers }: PropertyReplays): PropertyEvidence {
  const { facts, measured, eto } = sources;
  const chains = measured.map(({ chain }) => chain);
  const zones = zonesByMonth(facts.zones, chains)(monthOf(calendar), chains);
  const neededOf = neededByDay(eto.weather, calendar);
  const gathered = { calendar, zones, controllers, neededOf };
  return { ...gathered, meters: measured.map((chain) => meterEvidence(sources, gathered, chain)) };
}

// Plants are taken as they stand at the end of the span.
const monthOf = ({ firstDay, days }: DaySpan): string =>
  new Date((firstDay + days - 1) * 86_400_000).toISOString().slice(0, 'YYYY-MM'.length);

type Gathered = Omit<PropertyEvidence, 'meters'>;

function meterEvidence(sources: EvidenceSources, gathered: Gathered, { chain, intervals }: MeteredChain): MeterEvidence {
  const { facts, measured, eto, pricePerLitre } = sources;
  const { calendar, zones } = gathered;
  const { firstDay, days, midnights } = calendar;
  const newest = chain.meters.at(-1)!;
  const ids = new Set(chain.meters.map(({ id }) => id));
  const own = zonesOfMeter(zones, chain.id, measured.length);
  const usage = usageSteps(
    facts.usageDays.filter(({ meterId }) => ids.has(meterId)),
    calendar,
  );
  const step = stepOf(usage, newest.resolution === null ? null : litresFrom(newest.resolution * newest.multiplier, newest.unit));
  const water = programmedWater(gathered, own);
  const indexed = withTypicalFlows(own, facts.zones);
  const told = [...feedPieces(usage !== null, intervals, water.litres, firstDay), ...wholeIntervals(intervals)];
  const judged = told.filter(({ toLocalDay }) => toLocalDay > firstDay).sort((a, b) => a.fromLocalDay - b.fromLocalDay);
  const flows = own?.map(evidenceZone) ?? [];
  return {
    meterId: chain.id,
    kind: newest.kind,
    indoorLitresPerDay: newest.indoorLPerDay,
    sizeMm: newest.sizeMm,
    resolutionLitres: step,
    ...{ firstDay, days, midnights },
    rainMm: ofDays(eto.weather.rainMm, eto.weather.firstDay, calendar),
    etoMm: ofDays(eto.weather.etoMm, eto.weather.firstDay, calendar),
    programmedLitres: water.litres,
    programmedIsEstimate: water.isEstimate,
    litresOfZones: water.byZone,
    handLitresPerDay: handLitresPerDay(zones, chain.id, measured.length),
    foundDays: foundDays(facts),
    indexLitres: indexed && programmedWater(gathered, indexed).litres,
    neededLitres: sumOf(own?.map((zone) => gathered.neededOf(zone)) ?? null, days),
    programmedRelativeSd: commonFlowSd(flows, water.litresOfZones),
    zones: flows,
    runs: own ? runsOfSpans(gathered.controllers, own, [...fedDays(usage, calendar), ...daysOfReading(judged, calendar)], calendar) : [],
    intervals: judged,
    billed: intervals.filter(({ source, fromLocalDay }) => source === 'bills' && fromLocalDay >= firstDay),
    usage: usage && { ...usage, resolutionLitres: step },
    pricePerLitre,
  };
}

/** Days on which settings were found. */
const foundDays = ({ settings }: PropertyFacts): number[] =>
  settings.flatMap(({ record, localTime }) => (record === 'found' ? [dayNumberOfDate(localTime.slice(0, 'YYYY-MM-DD'.length))] : []));

const evidenceZone = (zone: AccountZone): EvidenceZone => ({
  zoneId: zone.id,
  controllerId: zone.controllerId,
  station: zone.station,
  flowLPerMin: zone.flowLPerMin,
  flowRelativeSd: defaultRelativeSd.flow[zone.flowSource],
});

/** Volumes are whole steps of the dial when they are off by no more than this share of one: decimals are cut when they are written. */
const NEARLY = 0.02;
/** And nearly all of them are. */
const NEARLY_ALL = 0.95;

/** The least step of a meter: the dial's, unless its feed tells volumes between them. [L] */
function stepOf(usage: MeterEvidence['usage'], ofDial: number | null): number | null {
  const ofFeed = usage?.resolutionLitres ?? null;
  if (!usage || ofFeed === null || ofDial === null) return ofFeed ?? ofDial;
  const passed = usage.litres.filter((litres) => litres > 0);
  const whole = passed.filter((litres) => Math.abs(litres / ofDial - Math.round(litres / ofDial)) < NEARLY);
  return whole.length < NEARLY_ALL * passed.length ? Math.min(ofFeed, ofDial) : Math.max(ofFeed, ofDial);
}

/** How far recorded flows may be off altogether: each zone's own errors even out as far as several share the water. */
function commonFlowSd(zones: readonly EvidenceZone[], litres: readonly number[]): number {
  const whole = litres.reduce((sum, own) => sum + own, 0);
  if (whole <= 0) return zones.reduce((most, { flowRelativeSd }) => Math.max(most, flowRelativeSd), 0) || defaultRelativeSd.flow.assumed;
  const mean = zones.reduce((sum, { flowRelativeSd }, at) => sum + (litres[at]! / whole) * flowRelativeSd, 0);
  const apart = Math.sqrt(zones.reduce((sum, { flowRelativeSd }, at) => sum + ((litres[at]! / whole) * flowRelativeSd) ** 2, 0));
  // Half of an error is common practice's: nozzles of one make, one pressure. An assumption.
  return Math.sqrt((mean ** 2 + apart ** 2) / 2);
}

/** The days of a feed, whose every run is asked for. */
function fedDays(usage: MeterEvidence['usage'], { firstDay, days, midnights }: PropertyCalendar): DaySpan[] {
  if (!usage) return [];
  const lastMinute = usage.firstMinute + usage.litres.length * usage.stepMinutes;
  const from = Math.max(
    0,
    midnights.findLastIndex((midnight) => midnight <= usage.firstMinute),
  );
  const after = midnights.findIndex((midnight) => midnight >= lastMinute);
  return [{ firstDay: firstDay + from, days: (after < 0 ? days : after) - from }];
}

/** Between readings only the days on which one was taken are divided at its hour: runs of the others are not asked for. */
function daysOfReading(intervals: MeterEvidence['intervals'], { firstDay, days }: DaySpan): DaySpan[] {
  const ends = intervals.flatMap(({ fromLocalDay, toLocalDay }) => [Math.floor(fromLocalDay), Math.floor(toLocalDay)]);
  return [...new Set(ends)].filter((day) => day >= firstDay && day < firstDay + days).map((day) => ({ firstDay: day, days: 1 }));
}

/** A feed by steps is judged by its hours; where settings are not known, or its steps are days, by its months. */
function feedPieces(hasSteps: boolean, intervals: MeterEvidence['intervals'], programmed: Float64Array, firstDay: number) {
  const pieces = feedAsReadings(intervals);
  if (!hasSteps) return pieces;
  const isUnknown = ({ fromLocalDay, toLocalDay }: MeterEvidence['intervals'][number]) => {
    const days = programmed.subarray(Math.max(0, Math.floor(fromLocalDay) - firstDay), Math.max(0, Math.ceil(toLocalDay) - firstDay));
    return days.filter(Number.isNaN).length > MOST_UNKNOWN * days.length;
  };
  return pieces.filter(isUnknown);
}

function ofDays(values: Float64Array, from: number, { firstDay, days }: DaySpan): Float64Array {
  const own = new Float64Array(days);
  for (let day = 0; day < days; day++) own[day] = values[firstDay + day - from] ?? Number.NaN;
  return own;
}

function sumOf(zones: readonly Float64Array[] | null, days: number): Float64Array {
  const sums = new Float64Array(days);
  if (!zones?.length) return sums.fill(Number.NaN);
  for (const zone of zones) for (let day = 0; day < days; day++) sums[day]! += zone[day]!;
  return sums;
}
