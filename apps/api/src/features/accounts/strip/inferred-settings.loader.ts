import { dateOfDayNumber, dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { MeterEvidence } from '@rillbook/metering/detection/evidence/meter-evidence.js';
import { type InferredDays, type InferredProgram as Inferred, inferSchedule } from '@rillbook/metering/detection/hourly/infer-schedule.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { defineLoader } from '../../../platform/graphql/loader.js';
import { measuredChains } from '../evidence/measured-chains.js';
import { type PropertyEvidence, propertyEvidence } from '../evidence/property-evidence.js';
import { propertyReplays } from '../evidence/property-replays.js';
import { EtoSeries } from '../gather/eto-series.js';
import type { PropertyFacts } from '../gather/property-facts.js';
import { propertyFacts } from '../gather/property-facts.repository.js';
import { InferredProgram, InferredSettings } from './inferred-settings.type.js';

interface Asked {
  readonly controllerId: string;
  readonly propertyId: string;
  /** the organization's local date; its own usage is not over yet */
  readonly today: string;
}

/** Days looked at: those that a schedule is inferred from, and some by which a feed may be late. */
const DAYS = 35;
const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const MINUTES_PER_HOUR = 60;
const NEAREST_MINUTES = 5;
const MINUTES_PER_DAY = 1440;

const evidenceOfDays = defineLoader<string, PropertyEvidence | null>(async (tx, keys) => {
  const wanted = new Map(keys.map((key) => [key, key.split(' ') as [string, string]]));
  const facts = new Map(
    (
      await propertyFacts.of(
        tx,
        [...wanted.values()].map(([id]) => id),
      )
    ).map((each) => [each.property.id, each]),
  );
  const answers = new Map<string, PropertyEvidence | null>();
  for (const [key, [id, today]] of wanted) {
    const of = facts.get(id);
    answers.set(key, of && of.usageDays.length > 0 ? await evidenceOf(tx, of, today) : null);
  }
  return answers;
}, null);

async function evidenceOf(tx: OrganizationTransaction, facts: PropertyFacts, today: string): Promise<PropertyEvidence> {
  const { stationId } = facts.property;
  const eto = stationId ? await EtoSeries.of(tx, stationId) : EtoSeries.none;
  const measured = measuredChains(facts, eto);
  const span = { firstDay: dayNumberOfDate(today) - DAYS, days: DAYS };
  return propertyEvidence({ facts, eto, measured, pricePerLitre: null }, propertyReplays(facts, eto, span));
}

/** What usage says of a controller; null where it says nothing. */
export async function inferredSettings(
  tx: OrganizationTransaction,
  { controllerId, propertyId, today }: Asked,
): Promise<InferredSettings | null> {
  const evidence = await evidenceOfDays.of(tx).load(`${propertyId} ${today}`);
  const meter = evidence?.meters.find((each) => each.usage && servesOnly(each, controllerId));
  if (!meter?.usage) return null;
  const days = knownDays(meter);
  const programs = days === 0 ? [] : inferSchedule(meter.usage, { ...meter, days });
  if (programs.length === 0) return null;
  return Object.assign(new InferredSettings(), {
    meterId: meter.meterId,
    through: dateOfDayNumber(meter.firstDay + days - 1),
    programs: programs.map(shown),
  });
}

const servesOnly = ({ zones }: MeterEvidence, controllerId: string): boolean =>
  zones.length > 0 && zones.every((zone) => zone.controllerId === controllerId);

/** Days up to the newest on which the feed knows anything. */
function knownDays({ usage, days, midnights }: MeterEvidence): number {
  const { firstMinute, stepMinutes, litres } = usage!;
  const last = litres.findLastIndex((each) => !Number.isNaN(each));
  const minute = firstMinute + last * stepMinutes;
  return last < 0 ? 0 : Array.from({ length: days }, (_, day) => midnights[day]!).filter((midnight) => midnight <= minute).length;
}

function shown({ program, days, starts, confidence }: Inferred): InferredProgram {
  return Object.assign(new InferredProgram(), {
    name: program,
    days: wordsOf(days),
    starts: starts.map(({ clockMinute }) => clockOf(clockMinute)),
    minutes: starts.map(({ minutes }) => Math.round(minutes)),
    confidence,
  });
}

function wordsOf(days: InferredDays): string {
  if ('weekdays' in days) return days.weekdays.map((weekday) => WEEKDAYS[weekday]).join(' ');
  return days.everyDays === 1 ? 'daily' : `every ${days.everyDays} from ${dateOfDayNumber(days.fromLocalDay)}`;
}

function clockOf(minute: number): string {
  const nearest = (Math.round(minute / NEAREST_MINUTES) * NEAREST_MINUTES) % MINUTES_PER_DAY;
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${two(Math.floor(nearest / MINUTES_PER_HOUR))}:${two(nearest % MINUTES_PER_HOUR)}`;
}
