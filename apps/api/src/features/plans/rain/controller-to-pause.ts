import { type RainPauseLength, rainPauseLength } from '@rillbook/irrigation/pauses/rain-pause-length.js';
import type { WateringRule } from '@rillbook/irrigation/rules/watering-rule.js';
import { Temporal } from 'temporal-polyfill';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import type { RootZoneToday, WeatherToday } from '../../accounts/needs/root-zones-today.service.js';
import { showController } from '../../portfolio/controllers/controller.type.js';
import type { metersOfProperty } from '../../portfolio/meters/meters-of-property.loader.js';
import type { propertyOfId } from '../../portfolio/properties/property.loader.js';
import { showProperty } from '../../portfolio/properties/property.type.js';
import { presentAndPlanned } from '../../settings/facts/present-and-planned.loader.js';
import { pausesOfController } from '../../settings/pauses/pauses-of-controller.loader.js';
import { programFromKept } from '../../settings/program-from-kept.service.js';
import { addressNumberOf, type PlannableController } from '../gather/plan-input.service.js';
import { daysByRule } from './days-by-rule.js';
import { keptByPause } from './kept-by-pause.js';
import { ControllerToPause } from './rain-pause-list.type.js';

/** A property as its table has it. */
export type PropertyRow = NonNullable<Awaited<ReturnType<ReturnType<(typeof propertyOfId)['of']>['load']>>>;
type PauseRow = Awaited<ReturnType<ReturnType<(typeof pausesOfController)['of']>['load']>>[number];
type MeterRow = Awaited<ReturnType<ReturnType<(typeof metersOfProperty)['of']>['load']>>[number];

/** A property on which it rained, what its root zones hold, and when it is asked. */
export interface RainedOn {
  readonly property: PropertyRow;
  readonly weather: WeatherToday;
  readonly zones: readonly RootZoneToday[];
  readonly now: Date;
  readonly today: string;
}

/** What bounds pauses on the property besides its root zones. */
export interface RulesThere {
  readonly rules: readonly WateringRule[];
  readonly meters: readonly MeterRow[];
}

/** What can be said of one controller; null where its zones do not do without water for a day. */
export async function controllerToPause(
  tx: OrganizationTransaction,
  place: RainedOn,
  controller: PlannableController,
  there: RulesThere,
): Promise<ControllerToPause | null> {
  const zones = place.zones.filter(({ zone }) => zone.controllerId === controller.id && zone.station !== null && !zone.handWatered);
  const length = lengthOf(place, zones, there);
  if (!length) return null;
  const { property, weather, now, today } = place;
  const again = Temporal.PlainDate.from(today).add({ days: length.days });
  const until = new Date(again.toZonedDateTime(property.timeZone).epochMilliseconds);
  const { present } = await presentAndPlanned.of(tx).load(controller.id);
  const pauses = await pausesOfController.of(tx).load(controller.id);
  const running = pauses.find((pause) => isRunning(pause, now)) ?? null;
  const wall = (instant: Date): string => wallTimeIn(property.timeZone, instant);
  const kept = (programs: NonNullable<typeof present>['programs']): number | null =>
    keptByPause({
      traits: { ...controller, adjustScope: controller.adjustScope ?? 'program' },
      programs: programs.map(programFromKept),
      pauses: pauses.map(({ pausedFrom, pausedUntil }) => ({ from: wall(pausedFrom), until: pausedUntil && wall(pausedUntil) })),
      zones: zones.map(({ zone }) => zone),
      rain: weather.rain,
      ...{ now: wall(now), until: wall(until) },
    });
  return Object.assign(new ControllerToPause(), {
    controllerId: controller.id,
    property: showProperty(property),
    controller: showController(controller),
    rainMm: weather.rain.reduce((sum, { mm }) => sum + mm, 0),
    lastRainOn: weather.rain.at(-1)!.date,
    waterAgainOn: again.toString(),
    until,
    days: length.days,
    because: length.because,
    firstZone: zones.find(({ zone }) => zone.id === length.firstZoneId)!.zone.name,
    keptLitres: present?.state === 'on' ? kept(present.programs) : null,
    pausesItself: pausesItself(controller, present?.state ?? null, running !== null && isRunning(running, until)),
    pausedUntil: running?.pausedUntil ?? null,
  });
}

function lengthOf({ property, weather, today }: RainedOn, zones: readonly RootZoneToday[], there: RulesThere): RainPauseLength | null {
  if (!zones.length) return null;
  const meterIds = new Set(zones.map(({ zone }) => zone.meterId));
  const waters = new Set(there.meters.filter(({ id }) => meterIds.has(null) || meterIds.has(id)).map(({ water }) => water));
  const [water = null] = waters.size === 1 ? waters : [];
  const stations = zones.map(({ zone, plants, method }) => ({ station: zone.station!, plants, method }));
  const ruleDays = daysByRule(there.rules, { addressNumber: addressNumberOf(property.address), water, stations }, weather.rain, today);
  return rainPauseLength(
    zones.map(({ zone, days, isKnown }) => ({ zoneId: zone.id, days, isKnown })),
    ruleDays,
  );
}

const isRunning = ({ pausedFrom, pausedUntil }: PauseRow, at: Date): boolean =>
  pausedFrom <= at && (pausedUntil === null || pausedUntil >= at);

/** Why nobody has to go; a rain sensor that is there counts, whatever it is set to. */
function pausesItself({ rainSensor, rainSensorMm }: PlannableController, state: string | null, isPaused: boolean): string | null {
  if (isPaused) return 'paused';
  if (state === 'off' || state === 'weather') return state;
  return (rainSensor ?? rainSensorMm !== null) ? 'rain sensor' : null;
}

const wallTimeIn = (timeZone: string, instant: Date): string =>
  Temporal.Instant.fromEpochMilliseconds(instant.getTime())
    .toZonedDateTimeISO(timeZone)
    .toPlainDateTime()
    .toString({ smallestUnit: 'minute' });
