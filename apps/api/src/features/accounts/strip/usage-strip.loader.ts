import { dateOfDayNumber, dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { MeterEvidence } from '@rillbook/metering/detection/evidence/meter-evidence.js';
import { smallestSteadyFlow } from '@rillbook/metering/detection/hourly/leaks/steady-limit.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { defineLoader } from '../../../platform/graphql/loader.js';
import { type PropertyEvidence, propertyEvidence } from '../evidence/property-evidence.js';
import { propertyReplays } from '../evidence/property-replays.js';
import { EtoSeries } from '../gather/eto-series.js';
import { measuredChains } from '../evidence/measured-chains.js';
import type { PropertyFacts } from '../gather/property-facts.js';
import { propertyFacts } from '../gather/property-facts.repository.js';
import { ProgrammedWindow, UsageStrip, UsageStripDay } from './usage-strip.type.js';

/** Days of a property's meter, both included; without a meter the property's only one. */
export interface StripOf {
  readonly propertyId: string;
  readonly meterId: string | null;
  readonly from: string;
  readonly until: string;
}

const HOUR = 60;
const HOURS_OF_DAY = 24;

const strip = defineLoader<string, UsageStrip | null>(async (tx, keys) => {
  const wanted = keys.map((key) => JSON.parse(key) as StripOf);
  const ids = [...new Set(wanted.map(({ propertyId }) => propertyId))];
  const facts = new Map((await propertyFacts.of(tx, ids)).map((each) => [each.property.id, each]));
  const answers = new Map<string, UsageStrip | null>();
  for (const [at, key] of keys.entries()) {
    const of = facts.get(wanted[at]!.propertyId);
    answers.set(key, of ? await stripOf(tx, of, wanted[at]!) : null);
  }
  return answers;
}, null);

/** The hours of some days of a meter; null where it has no feed by the hour on any of them. */
export const usageStrip = (tx: OrganizationTransaction, of: StripOf): Promise<UsageStrip | null> => strip.of(tx).load(JSON.stringify(of));

async function stripOf(tx: OrganizationTransaction, facts: PropertyFacts, { meterId, from, until }: StripOf): Promise<UsageStrip | null> {
  const { stationId } = facts.property;
  const eto = stationId ? await EtoSeries.of(tx, stationId) : EtoSeries.none;
  const firstDay = dayNumberOfDate(from);
  const span = { firstDay, days: dayNumberOfDate(until) - firstDay + 1 };
  const measured = measuredChains(facts, eto);
  const evidence = propertyEvidence({ facts, eto, measured, pricePerLitre: null }, propertyReplays(facts, eto, span));
  const chain = measured.find(({ chain: each }) => each.meters.some(({ id }) => id === meterId))?.chain;
  const id = chain?.id ?? (meterId === null && measured.length === 1 ? measured[0]!.chain.id : null);
  const meter = evidence.meters.find((each) => each.meterId === id);
  if (!meter?.usage) return null;
  const days = Array.from({ length: span.days }, (_, day) => dayOf(evidence, meter, day));
  return Object.assign(new UsageStrip(), { meterId: meter.meterId, days, smallestSeenLPerMin: smallestSteadyFlow(meter) });
}

function dayOf({ calendar, controllers }: PropertyEvidence, meter: MeterEvidence, day: number): UsageStripDay {
  const [begin, end] = [calendar.midnights[day]!, calendar.midnights[day + 1]!];
  const hours = Array.from({ length: Math.round((end - begin) / HOUR) }, (_, hour) =>
    litresBetween(meter, begin + hour * HOUR, begin + (hour + 1) * HOUR),
  );
  const rain = meter.rainMm[day]!;
  const own = controllers.filter(({ id }) => meter.zones.some(({ controllerId }) => controllerId === id));
  return Object.assign(new UsageStripDay(), {
    date: dateOfDayNumber(calendar.firstDay + day),
    hours,
    clock: clockOf(hours.length),
    rainMm: Number.isNaN(rain) ? null : rain,
    windows: windowsOf(meter, begin, end),
    isProgrammedKnown: own.length > 0 && own.every(({ unknown }) => unknown[day] === null),
  });
}

/** Hours that the clock shows: the second is skipped in spring and comes twice in autumn, as nearly everywhere. */
const clockOf = (hours: number): number[] => Array.from({ length: hours }, (_, hour) => (hour < 2 ? hour : hour + HOURS_OF_DAY - hours));

function litresBetween({ usage }: MeterEvidence, from: number, until: number): number | null {
  const { firstMinute, stepMinutes, litres } = usage!;
  const [first, last] = [Math.round((from - firstMinute) / stepMinutes), Math.round((until - firstMinute) / stepMinutes)];
  let sum = 0;
  for (let step = first; step < last; step++) sum += litres[step] ?? Number.NaN;
  return Number.isNaN(sum) ? null : sum;
}

/** Runs of one program that follow each other are one stretch. */
function windowsOf({ runs, zones }: MeterEvidence, begin: number, end: number): ProgrammedWindow[] {
  const windows: ProgrammedWindow[] = [];
  const controllerOf = new Map(zones.map(({ zoneId, controllerId }) => [zoneId, controllerId]));
  for (const run of runs) {
    const controllerId = controllerOf.get(run.zoneId);
    if (!controllerId || run.end <= begin || run.begin >= end) continue;
    const [fromMinute, untilMinute] = [Math.max(run.begin, begin) - begin, Math.min(run.end, end) - begin];
    const before = windows.findLast((one) => one.controllerId === controllerId && one.program === run.program);
    if (before && fromMinute <= before.untilMinute + 1) before.untilMinute = Math.max(before.untilMinute, untilMinute);
    else windows.push(Object.assign(new ProgrammedWindow(), { controllerId, program: run.program, fromMinute, untilMinute }));
  }
  return windows;
}
