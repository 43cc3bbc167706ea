import type { ControllerReplay } from '@rillbook/irrigation/settings/replay/replay-controller.js';
import { controllersOf } from '../gather/account-input.js';
import type { EtoSeries } from '../gather/eto-series.js';
import type { PropertyFacts } from '../gather/property-facts.js';
import { type DaySpan, type PropertyCalendar, propertyCalendar } from './property-calendar.js';
import { type ReplayedController, replayedController } from './replayed-controller.js';

/** What a property's settings held over some days: replayed once, for what is found of all of them and for the accounts of spans among them. */
export interface PropertyReplays {
  readonly calendar: PropertyCalendar;
  readonly controllers: readonly ReplayedController[];
  /** the replays of one of the spans that were asked for, by controller; those of a controller with a rain sensor are not among them */
  ofSpan(at: number): ReadonlyMap<string, ControllerReplay>;
}

/** Replays all controllers of a property over some days, and over spans among these, none of which shares a day with another. */
export function propertyReplays(
  facts: PropertyFacts,
  { weather }: EtoSeries,
  all: DaySpan,
  spans: readonly DaySpan[] = [],
): PropertyReplays {
  const calendar = propertyCalendar(facts.property.timeZone, all);
  const parts = spans.map(({ firstDay, days }) => ({ from: firstDay - all.firstDay, days }));
  const controllers = controllersOf(facts).map((controller) => replayedController(controller, calendar, weather, parts));
  const shared = controllers.filter((controller) => controller.parts !== null);
  return { calendar, controllers, ofSpan: (at) => new Map(shared.map(({ id, parts: own }) => [id, own![at]!])) };
}
