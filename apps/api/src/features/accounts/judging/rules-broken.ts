import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { judgeRules } from '@rillbook/irrigation/rules/judge-rules.js';
import type { RuledPlace, WateringRule } from '@rillbook/irrigation/rules/watering-rule.js';
import type { AccountController } from '@rillbook/metering/account/account-input.js';
import type { Episode } from '@rillbook/metering/detection/evidence/episode.js';
import { ruleFindings } from '@rillbook/metering/detection/settings/rule-finding.js';
import { controllersOf } from '../gather/account-input.js';
import type { EtoSeries } from '../gather/eto-series.js';
import type { PropertyFacts, ZoneFact } from '../gather/property-facts.js';
import { propertyCalendar } from '../evidence/property-calendar.js';

/** Rules are looked at over the last thirteen months: who broke one before has been told, or it is no news. */
const DAYS_LOOKED_AT = 400;
/** A program that has not broken a rule for so long has been changed: weekly days come round twice. */
const KEPT_AFTER_DAYS = 15;
const MINUTES_PER_DAY = 1440;

/** Rules of the water supplier that the settings break, through time. */
export function rulesBroken(facts: PropertyFacts, rules: readonly WateringRule[], eto: EtoSeries, today: number): Episode[] {
  if (rules.length === 0) return [];
  const span = { firstDay: today - DAYS_LOOKED_AT, days: DAYS_LOOKED_AT };
  const { clockChanges } = propertyCalendar(facts.property.timeZone, span);
  const place = (controller: AccountController): RuledPlace => ({
    addressNumber: addressNumber(facts.property.address),
    water: facts.meters[0]?.water ?? null,
    stations: zonesOf(facts, controller).map(({ station, plants, method }) => ({ station: station!, plants, method })),
    rain: rainOf(eto, span.firstDay, span.days),
  });
  return controllersOf(facts).flatMap((controller) => {
    const { facts: settings, pauses, traits } = controller;
    const breaches = judgeRules({ ...span, facts: settings, pauses, traits, clockChanges }, rules, place(controller));
    const zoneOfStation = new Map(zonesOf(facts, controller).map(({ station, id }) => [station!, id]));
    return ruleFindings({ controllerId: controller.id, zoneOfStation }, breaches).map((candidate) => {
      const kept = dayNumberOfDate(candidate.untilDate) + KEPT_AFTER_DAYS;
      return { ...candidate, openedLocalDay: dayNumberOfDate(candidate.fromDate) + 1, clearedLocalDay: kept <= today ? kept : null };
    });
  });
}

const zonesOf = (facts: PropertyFacts, { id }: AccountController): readonly ZoneFact[] =>
  facts.zones.filter(({ controllerId, station }) => controllerId === id && station !== null);

/** The number of a street address: it stands first, or last before the comma. */
function addressNumber(address: string | null): number | null {
  const [, first, last] = /^\s*(\d+)\b|\b(\d+)\s*(?:,|$)/.exec(address ?? '') ?? [];
  const number = first ?? last;
  return number === undefined ? null : Number(number);
}

/** A day's rain ended somewhere between its midnights. */
function rainOf({ weather }: EtoSeries, firstDay: number, days: number): RuledPlace['rain'] {
  return Array.from({ length: days }, (_, day) => firstDay + day).flatMap((day) => {
    const mm = weather.rainMm[day - weather.firstDay] ?? Number.NaN;
    return mm > 0 ? [{ mm, endedFrom: day * MINUTES_PER_DAY, endedUntil: (day + 1) * MINUTES_PER_DAY }] : [];
  });
}
