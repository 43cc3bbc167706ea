import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import type { NewestFacts } from '../accounts-computed.event.js';
import type { PropertyFacts } from '../gather/property-facts.js';

const latest = (dates: readonly string[]): string | null => [...dates].sort().at(-1) ?? null;

function lastDate(days: readonly number[]): string | null {
  return days.length ? dateOfDayNumber(days.reduce((last, day) => Math.max(last, day))) : null;
}

/** When something was last known of each meter and controller of a property. */
export function newestFacts(facts: PropertyFacts): NewestFacts {
  const inUse = facts.meters.filter((meter) => meter.removedOn === null);
  const readings = inUse.map((meter) => ({
    meterId: meter.id,
    on: lastDate([
      ...facts.readings.filter((reading) => reading.meterId === meter.id).map((reading) => reading.localDay),
      ...facts.usageDays.filter((day) => day.meterId === meter.id).map((day) => day.dayNumber),
      ...facts.bills.filter((bill) => bill.meterId === meter.id).map((bill) => bill.endDay),
    ]),
  }));
  const settings = facts.controllers.map((controller) => {
    const replayed = facts.settings.filter((fact) => fact.controllerId === controller.id && fact.record !== 'planned');
    return {
      controllerId: controller.id,
      on: latest(replayed.map((fact) => fact.localTime.slice(0, 10))),
      known: replayed.length > 0 && replayed.at(-1)!.state !== 'unknown',
    };
  });
  const newest = latest([...readings, ...settings].flatMap((one) => (one.on ? [one.on] : [])));
  const lastReading = facts.readings.at(-1)?.readAt;
  return { readings, settings, at: lastReading ?? new Date(`${newest ?? '2000-01-01'}T12:00:00Z`) };
}
