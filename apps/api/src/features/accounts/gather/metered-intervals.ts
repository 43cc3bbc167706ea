import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { judgeReadings } from '@rillbook/metering/detection/readings/judge-readings.js';
import type { JudgedInSeries, ReadingSeries } from '@rillbook/metering/detection/readings/reading-series.js';
import { resolutionSd } from '@rillbook/metering/intervals/register-volume.js';
import type { UsageInterval } from '@rillbook/metering/intervals/usage-interval.js';
import { litresFrom } from '@rillbook/units/volume.js';
import type { EtoSeries } from './eto-series.js';
import type { MeterChain } from './meter-chains.js';
import type { MeterFact, PropertyFacts, ReadingFact, UsageDayFact } from './property-facts.js';

/** The readings of one meter as they are judged, and which of them is which on record. */
export interface ReadMeter {
  readonly series: ReadingSeries;
  readonly judged: readonly JudgedInSeries[];
  /** by place in the series; null where a register was noted at an installation or a removal */
  readonly readingIds: readonly (string | null)[];
  /** registers with more digits than the meter has: nobody's, and no neighbour of any other */
  readonly impossible: readonly Register[];
}

/** The weather over a property, and what its plants may need of it. */
export interface Demand {
  readonly eto: EtoSeries;
  /** water that all zones need for a mm of reference ET without rain; 0 when no zone is on record [L/mm] */
  readonly litresPerMm: number;
  /** what the settings put out between two instants; null where that is not known [L] */
  programmedLitres(from: number, until: number): number | null;
}

/** What stood on a meter at an instant. */
export interface Register {
  readonly readingId: string | null;
  readonly localDay: number;
  readonly register: number;
}

const SECONDS_PER_DAY = 86_400;
const RIGHT = new Set<string>(['ok', 'rollover', 'stuck']);

/** The registers of one meter in order, with those of its installation and removal. */
function registersOf(meter: MeterFact, readings: readonly ReadingFact[]): Register[] {
  const list: Register[] = readings
    .filter((reading) => reading.meterId === meter.id)
    .map((reading) => ({ readingId: reading.id, localDay: reading.localDay, register: reading.register }));
  // A swap happens in the day; noon is within half a day of it.
  if (meter.installedOn && meter.firstRegister !== null)
    list.push({ readingId: null, localDay: dayNumberOfDate(meter.installedOn) + 0.5, register: meter.firstRegister });
  if (meter.removedOn && meter.lastRegister !== null)
    list.push({ readingId: null, localDay: dayNumberOfDate(meter.removedOn) + 0.5, register: meter.lastRegister });
  return list
    .sort((a, b) => a.localDay - b.localDay)
    .filter((register, index, all) => index === 0 || register.localDay > all[index - 1]!.localDay);
}

/** What the plants may need between two instants if no rain falls, and people indoors; null where the weather or the zones are not known. [L] */
const demanded =
  ({ eto, litresPerMm }: Demand, { kind, indoorLPerDay }: MeterFact) =>
  (from: number, until: number): number | null => {
    const mm = litresPerMm > 0 ? eto.etoOf(from, until) : null;
    return mm === null ? null : mm * litresPerMm + (kind === 'mixed' ? (indoorLPerDay ?? 0) * (until - from) : 0);
  };

/** The readings of one meter in order of time, each judged by what is on record now. */
function readMeter(meter: MeterFact, registers: readonly Register[], others: ReadingSeries['others'], demand: Demand): ReadMeter {
  const { digits } = meter;
  const possible = registers.filter(({ register }) => digits === null || register < 10 ** digits);
  const series: ReadingSeries = {
    meterId: meter.id,
    digits,
    litresPerRegisterUnit: litresFrom(meter.multiplier, meter.unit),
    readings: possible.map(({ localDay, register }) => ({ localDay, register })),
    others,
    demandLitres: demanded(demand, meter),
    programmedLitres: (from, until) => demand.programmedLitres(from, until),
  };
  return {
    series,
    judged: judgeReadings(series),
    readingIds: possible.map(({ readingId }) => readingId),
    impossible: registers.filter((register) => !possible.includes(register)),
  };
}

/** Volumes between a meter's readings; one that cannot be right is left out and its neighbours are joined over it. */
function readingIntervals(meter: MeterFact, { judged }: ReadMeter): UsageInterval[] {
  const sdLitres = resolutionSd(meter.resolution ?? 1, { unit: meter.unit, multiplier: meter.multiplier, digits: meter.digits });
  const intervals: UsageInterval[] = [];
  for (const { judgement, isRight, previous, localDay, litres } of judged) {
    const isGood = isRight ?? RIGHT.has(judgement);
    if (isGood && previous !== null && litres !== null)
      intervals.push({ fromLocalDay: previous.localDay, toLocalDay: localDay, litres, sdLitres, source: 'readings' });
  }
  return intervals;
}

/**
 * A day's feed as volumes without holes: neighbouring intervals are joined.
 *
 * @param nextSeconds the length of the day after, into which the last interval may reach: 23, 24 or 25 hours
 */
function usageIntervals(day: UsageDayFact, nextSeconds: number): UsageInterval[] {
  const joined: { from: number; to: number; litres: number }[] = [];
  day.startSeconds.forEach((start, index) => {
    const end = start + day.lengthSeconds[index]!;
    const litres = litresFrom(day.volumes[index]!, day.unit);
    const last = joined.at(-1);
    if (last && last.to === start) Object.assign(last, { to: end, litres: last.litres + litres });
    else joined.push({ from: start, to: end, litres });
  });
  return joined.map(({ from, to, litres }) => ({
    fromLocalDay: day.dayNumber + from / day.daySeconds,
    toLocalDay: to <= day.daySeconds ? day.dayNumber + to / day.daySeconds : day.dayNumber + 1 + (to - day.daySeconds) / nextSeconds,
    litres,
    sdLitres: 0,
    source: 'usage',
  }));
}

/** Steps that bills are rounded to, in the meter's own unit, coarsest first. */
const BILLED_STEPS = [1, 0.1, 0.01, 0.001];
/** A volume that is off a whole step by less than this share of one is whole: litres were converted. */
const WHOLE = 1e-6;

/** Bills as volumes: registers are rounded to the step of which all of the meter's bills are whole. */
function billedIntervals({ unit, multiplier, digits }: MeterFact, bills: PropertyFacts['bills']): UsageInterval[] {
  const volumes = bills.map(({ litres }) => litres / litresFrom(1, unit));
  const isWhole = (step: number) => volumes.every((volume) => Math.abs(volume / step - Math.round(volume / step)) < WHOLE);
  const step = BILLED_STEPS.find(isWhole) ?? 0;
  const sdLitres = resolutionSd(step / multiplier, { unit, multiplier, digits });
  return bills.map(({ startDay, endDay, litres }) => ({ fromLocalDay: startDay, toLocalDay: endDay, litres, sdLitres, source: 'bills' }));
}

/** All volumes that one place of measuring has on record, of every source, and its readings as they are judged. */
export function meteredIntervals(
  chain: MeterChain,
  facts: Pick<PropertyFacts, 'meters' | 'readings' | 'usageDays' | 'bills'>,
  demand: Demand,
): { intervals: UsageInterval[]; read: ReadMeter[] } {
  const ids = new Set(chain.meters.map((meter) => meter.id));
  const others = facts.meters
    .filter((meter) => !ids.has(meter.id))
    .map((meter) => ({
      meterId: meter.id,
      readings: registersOf(meter, facts.readings).map(({ localDay, register }) => ({ localDay, register })),
    }));
  const read = chain.meters.map((meter) => readMeter(meter, registersOf(meter, facts.readings), others, demand));
  const feed = facts.usageDays.filter((day) => ids.has(day.meterId));
  const seconds = new Map(feed.map((day) => [`${day.meterId} ${day.dayNumber}`, day.daySeconds]));
  const usage = feed.flatMap((day) => usageIntervals(day, seconds.get(`${day.meterId} ${day.dayNumber + 1}`) ?? SECONDS_PER_DAY));
  const bills = billedIntervals(
    chain.meters.at(-1)!,
    facts.bills.filter((bill) => ids.has(bill.meterId)),
  );
  return { intervals: [...read.flatMap((one, at) => readingIntervals(chain.meters[at]!, one)), ...usage, ...bills], read };
}
