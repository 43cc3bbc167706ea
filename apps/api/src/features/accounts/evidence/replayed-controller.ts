import type { ReplayInput, UnknownDay } from '@rillbook/irrigation/settings/replay-controller.js';
import { replayController } from '@rillbook/irrigation/settings/replay-controller.js';
import { type ReplayedRun, replayStarts } from '@rillbook/irrigation/settings/replay-starts.js';
import { daysHeldBack } from '@rillbook/irrigation/settings/replay-with-sensor.js';
import { settingsTimeline } from '@rillbook/irrigation/settings/settings-timeline.js';
import type { AccountController } from '@rillbook/metering/account/account-input.js';
import type { WeatherSeries } from '@rillbook/metering/volumes/weather-series.js';
import type { DaySpan, PropertyCalendar } from './property-calendar.js';

/** What one controller's settings held over a span of days. */
export interface ReplayedController {
  readonly id: string;
  readonly runsOneAtATime: boolean;
  /** by day: why it cannot be replayed, null where it can */
  readonly unknown: readonly (UnknownDay | null)[];
  /** minutes of a station by day, whatever is not known of a day; null where it never ran */
  minutesOf(station: number): Float64Array | null;
  /** every run of some days of the span */
  runsOf(days: DaySpan): readonly ReplayedRun[];
}

/** A controller's settings over a span, its rain sensor's as the account takes them: where its threshold is not known, every start is taken to have run. */
export function replayedController(controller: AccountController, calendar: PropertyCalendar, weather: WeatherSeries): ReplayedController {
  const { id, facts, pauses, traits } = controller;
  const { firstDay, days, clockChanges } = calendar;
  const input: ReplayInput = { firstDay, days, facts, pauses, traits, clockChanges };
  const daysWithoutStarts = daysHeldBack(input, weather);
  const { unknown, stations } = replayController({ ...input, daysWithoutStarts });
  const timeline = settingsTimeline(facts, clockChanges);
  return {
    id,
    runsOneAtATime: (traits.runsAtOnce ?? 1) < 2,
    unknown,
    minutesOf: (station) => stations.get(station)?.laidMinutes ?? null,
    runsOf: (span) => replayStarts({ ...input, ...span, daysWithoutStarts }, timeline),
  };
}
