import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { Episode } from '@rillbook/metering/detection/evidence/episode.js';
import { judgeStale } from '@rillbook/metering/detection/account/judge-stale.js';
import type { NewestFacts } from '../accounts-computed.event.js';

/** How old news may be before somebody should look: common practice for monthly rounds. */
const STALE_AFTER = { visitDays: null, meteredDays: 45, settingsDays: null };

/** A property of which nothing was heard for too long: open since the day on which it was too long. */
export function silence({ readings, settings }: NewestFacts, firstDate: string, today: string): Episode[] {
  const heard = [...readings, ...settings].flatMap(({ on }) => on ?? []).sort();
  const inUseSince = heard[0] ?? firstDate;
  const candidate = judgeStale(
    {
      ...{ today, inUseSince, lastVisitOn: null },
      meters: readings.map(({ meterId, on }) => ({ meterId, lastMeteredOn: on })),
      controllers: settings.map(({ controllerId, on }) => ({ controllerId, lastSettingsOn: on })),
    },
    STALE_AFTER,
  );
  if (!candidate) return [];
  const last = readings.map(({ on }) => on ?? inUseSince).sort()[0] ?? inUseSince;
  const openedLocalDay = Math.min(dayNumberOfDate(today), dayNumberOfDate(last) + STALE_AFTER.meteredDays + 1);
  return [{ ...candidate, fromDate: last, openedLocalDay, clearedLocalDay: null }];
}
