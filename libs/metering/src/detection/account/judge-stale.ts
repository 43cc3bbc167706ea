import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { FindingCandidate } from '../finding-candidate.js';

/** When a property was last heard of: local dates, null for never. `meters` and `controllers` are those in use. */
export interface LastHeardOf {
  readonly today: string;
  readonly inUseSince: string;
  readonly lastVisitOn: string | null;
  readonly meters: readonly { readonly meterId: string; readonly lastMeteredOn: string | null }[];
  readonly controllers: readonly { readonly controllerId: string; readonly lastSettingsOn: string | null }[];
}

/** After how many days silence is stale; null never. */
export interface StaleAfter {
  readonly visitDays: number | null;
  readonly meteredDays: number | null;
  readonly settingsDays: number | null;
}

/**
 * Stale: no reading, no visit or no settings for longer than the organization allows; one finding for a property.
 *
 * What was never heard of is as old as the property's entry, so that a new client is not stale on its first day.
 *
 * @param heard - The dates of the last reading, visit and settings. [code]
 * @param after - After how many days each is stale. [d]
 * @returns The candidate, or null where nothing is stale. [code]
 * @throws {DomainError} `LOCAL_DATE_INVALID` when a date is none.
 */
export function judgeStale(heard: LastHeardOf, after: StaleAfter): FindingCandidate | null {
  const today = dayNumberOfDate(heard.today);
  const age = (date: string | null) => today - dayNumberOfDate(date ?? heard.inUseSince);
  const isStale = (date: string | null, days: number | null) => days !== null && age(date) > days;
  const meterIds = heard.meters.filter(({ lastMeteredOn }) => isStale(lastMeteredOn, after.meteredDays)).map(({ meterId }) => meterId);
  const controllerIds = heard.controllers
    .filter(({ lastSettingsOn }) => isStale(lastSettingsOn, after.settingsDays))
    .map(({ controllerId }) => controllerId);
  const visit = isStale(heard.lastVisitOn, after.visitDays);
  if (meterIds.length === 0 && controllerIds.length === 0 && !visit) return null;
  return {
    kind: 'stale',
    causeKey: 'stale',
    causeFamily: 'stale',
    meterId: meterIds.length === 1 ? (meterIds[0] ?? null) : null,
    controllerId: controllerIds.length === 1 ? (controllerIds[0] ?? null) : null,
    zoneIds: [],
    fromDate: heard.lastVisitOn ?? heard.inUseSince,
    untilDate: heard.today,
    litres: null,
    sdLitres: null,
    money: null,
    confidence: 1,
    evidence: { heard, after },
    says: {
      code: 'stale',
      details: { meterIds, controllerIds, daysSinceVisit: visit ? age(heard.lastVisitOn) : null, lastVisitOn: heard.lastVisitOn },
    },
  };
}
