import { type ControllerReplay, type ReplayInput, replayInParts } from '@rillbook/irrigation/settings/replay/replay-controller.js';
import { type ReplayedRun, replayStarts } from '@rillbook/irrigation/settings/replay/replay-starts.js';
import { daysHeldBack, hasRainSensor } from '@rillbook/irrigation/settings/replay/replay-with-sensor.js';
import { settingsTimeline } from '@rillbook/irrigation/settings/replay/settings-timeline.js';
import type { DayPart, UnknownDay } from '@rillbook/irrigation/settings/replay/station-days.js';
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
  /** every run of some days of the span as it was set: whether a rain sensor held it back is for the meter to say, since rain at a station decides it only nearly */
  runsOf(days: DaySpan): readonly ReplayedRun[];
}

/** A controller's replay, and those of parts of its days; null where a rain sensor leaves more than one replay of a part. */
export interface ReplayedInParts extends ReplayedController {
  readonly parts: readonly ControllerReplay[] | null;
}

/**
 * A controller's settings over a span, and over parts of it such as months. Its rain sensor's as the account takes them: where its threshold
 * is not known, every start is taken to have run.
 */
export function replayedController(
  controller: AccountController,
  calendar: PropertyCalendar,
  weather: WeatherSeries,
  parts: readonly DayPart[] = [],
): ReplayedInParts {
  const { id, facts, pauses, traits } = controller;
  const { firstDay, days, clockChanges } = calendar;
  const input: ReplayInput = { firstDay, days, facts, pauses, traits, clockChanges };
  const daysWithoutStarts = daysHeldBack(input, weather);
  const isShared = !hasRainSensor(traits);
  const replay = replayInParts({ ...input, daysWithoutStarts }, isShared ? parts : []);
  const { unknown, stations } = replay.whole;
  const timeline = settingsTimeline(facts, clockChanges);
  return {
    id,
    runsOneAtATime: (traits.runsAtOnce ?? 1) < 2,
    unknown,
    parts: isShared ? replay.parts : null,
    minutesOf: (station) => stations.get(station)?.laidMinutes ?? null,
    runsOf: (span) => replayStarts({ ...input, ...span }, timeline),
  };
}
