import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import { doubtfulReading } from '@rillbook/metering/detection/doubtful-reading.js';
import type { FindingCandidate } from '@rillbook/metering/detection/finding-candidate.js';
import { judgeAccount } from '@rillbook/metering/detection/account/judge-account.js';
import { judgeStale } from '@rillbook/metering/detection/judge-stale.js';
import type { Thresholds } from '@rillbook/metering/detection/thresholds.js';
import type { AccountsComputed, ComputedMonth } from '../../accounts/accounts-computed.event.js';

/** A month under way says something after a week: common practice. */
const LEAST_DAYS = 7;
/** How old news may be before somebody should look: common practice for monthly rounds. */
const STALE_AFTER = { visitDays: null, meteredDays: 45, settingsDays: null };
/** A misread is news for this long; older ones are history that later readings have overtaken. */
const DOUBTFUL_FOR_DAYS = 62;

/** The month that is judged: the newest whose need and either water or settings are known, once it has run for some days. */
export function judgedMonth(months: readonly ComputedMonth[]): ComputedMonth | null {
  const knows = ({ account }: ComputedMonth): boolean => {
    const { needed, metered, programmed } = account.property;
    return account.daysCovered >= LEAST_DAYS && needed.litres !== null && (metered.litres !== null || programmed.litres !== null);
  };
  return months.findLast(knows) ?? months.at(-1) ?? null;
}

function ofAccount(event: AccountsComputed, thresholds: Thresholds): readonly FindingCandidate[] {
  const judged = judgedMonth(event.months);
  if (!judged) return [];
  const pricePerLitre = Object.fromEntries(judged.account.meters.map((meter) => [meter.meterId, judged.pricePerLitre]));
  return judgeAccount({
    account: judged.account,
    history: event.months.filter(({ month }) => month < judged.month).flatMap((each) => each.history),
    thresholds,
    pricePerLitre,
  });
}

function ofReadings(event: AccountsComputed): FindingCandidate[] {
  const since = new Date(Date.parse(event.today) - DOUBTFUL_FOR_DAYS * 86_400_000).toISOString().slice(0, 10);
  return event.doubtful.flatMap((reading) => {
    const date = dateOfDayNumber(reading.localDay);
    if (date < since || !reading.previous) return [];
    const candidate = doubtfulReading({
      meterId: reading.meterId,
      date,
      previousDate: dateOfDayNumber(reading.previous.localDay),
      previousRegister: reading.previous.register,
      nextRegister: reading.register,
      judged: reading.judged,
    });
    return candidate ? [{ ...candidate, evidence: { ...candidate.evidence, readingId: reading.readingId } }] : [];
  });
}

function ofSilence(event: AccountsComputed): FindingCandidate[] {
  const { readings, settings } = event.newest;
  const heard = [...readings.map(({ on }) => on), ...settings.map(({ on }) => on)].filter((on) => on !== null).sort();
  const candidate = judgeStale(
    {
      today: event.today,
      inUseSince: heard[0] ?? event.months[0]?.account.firstDate ?? event.today,
      lastVisitOn: null,
      meters: readings.map(({ meterId, on }) => ({ meterId, lastMeteredOn: on })),
      controllers: settings.map(({ controllerId, on }) => ({ controllerId, lastSettingsOn: on })),
    },
    STALE_AFTER,
  );
  return candidate ? [candidate] : [];
}

/** Everything that a property's accounts and records give a person to look at: one candidate for a cause. */
export function candidatesOf(event: AccountsComputed, thresholds: Thresholds): FindingCandidate[] {
  const all = [...ofAccount(event, thresholds), ...ofReadings(event), ...ofSilence(event)];
  return [...new Map(all.map((candidate) => [candidate.causeKey, candidate])).values()];
}
