import { DAYS_BEFORE, type ReplayedRun } from '@rillbook/irrigation/settings/replay/replay-starts.js';
import type { AccountZone } from '@rillbook/metering/account/account-input.js';
import type { EvidenceRun } from '@rillbook/metering/detection/evidence/meter-evidence.js';
import type { DaySpan, PropertyCalendar } from './property-calendar.js';
import type { ReplayedController } from './replayed-controller.js';

/** Every run of some zones over spans of days, each once, in order of time; of other days there may be none. */
export function runsOfSpans(
  controllers: readonly ReplayedController[],
  zones: readonly AccountZone[],
  spans: readonly DaySpan[],
  calendar: PropertyCalendar,
): EvidenceRun[] {
  const apart = spansApart(spans);
  const runs = controllers.flatMap((controller) => {
    const ofStation = new Map(zones.flatMap((zone) => (zone.controllerId === controller.id ? [[zone.station, zone.id] as const] : [])));
    const laid = apart.flatMap((span) => runsFrom(controller, span, calendar));
    return (controller.runsOneAtATime ? laid : once(laid)).flatMap(({ station, program, begin, end }) => {
      const zoneId = ofStation.get(station);
      return zoneId ? [{ zoneId, program, begin, end }] : [];
    });
  });
  return runs.sort((a, b) => a.begin - b.begin);
}

// Of the days before a span it is not known what they waited for.
function runsFrom(controller: ReplayedController, span: DaySpan, { midnights, firstDay }: PropertyCalendar): readonly ReplayedRun[] {
  const midnight = midnights[span.firstDay - firstDay]!;
  return controller.runsOf(span).filter(({ end }) => end > midnight);
}

// Of programs side by side two may open a valve at the same minute.
function once(runs: readonly ReplayedRun[]): readonly ReplayedRun[] {
  return [...new Map(runs.map((run) => [`${run.station} ${run.begin}`, run])).values()];
}

// What one replay lays out another must not lay out again: without the days before its own it would start sooner what had to wait.
function spansApart(spans: readonly DaySpan[]): readonly DaySpan[] {
  const apart: DaySpan[] = [];
  for (const span of [...spans].sort((a, b) => a.firstDay - b.firstDay)) {
    const last = apart.at(-1);
    if (!last || span.firstDay - DAYS_BEFORE >= last.firstDay + last.days) {
      apart.push(span);
      continue;
    }
    const until = Math.max(last.firstDay + last.days, span.firstDay + span.days);
    apart[apart.length - 1] = { firstDay: last.firstDay, days: until - last.firstDay };
  }
  return apart;
}
