import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import type { NewestFacts } from '../accounts-computed.event.js';
import type { PropertyFacts } from '../gather/property-facts.js';

const latest = (dates: readonly string[]): string | null => [...dates].sort().at(-1) ?? null;

/** When something was last known of each meter and controller of a property. */
export function newestFacts(facts: PropertyFacts): NewestFacts {
  const inUse = facts.meters.filter((meter) => meter.removedOn === null);
  const readings = inUse.map((meter) => ({
    meterId: meter.id,
    on: latest([
      ...facts.readings.filter((reading) => reading.meterId === meter.id).map((reading) => dateOfDayNumber(reading.localDay)),
      ...facts.usageDays.filter((day) => day.meterId === meter.id).map((day) => dateOfDayNumber(day.dayNumber)),
      ...facts.bills.filter((bill) => bill.meterId === meter.id).map((bill) => dateOfDayNumber(bill.endDay)),
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
