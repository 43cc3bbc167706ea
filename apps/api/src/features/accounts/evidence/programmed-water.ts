import type { UnknownDay } from '@rillbook/irrigation/settings/replay/station-days.js';
import type { AccountZone } from '@rillbook/metering/account/account-input.js';
import type { DaySpan } from './property-calendar.js';
import type { ReplayedController } from './replayed-controller.js';

/** Replays over some days, and what a zone needs by day. */
export interface Replayed {
  readonly calendar: DaySpan;
  readonly controllers: readonly ReplayedController[];
  neededOf(zone: AccountZone): Float64Array;
}

/** What the settings put out by day, in litres; not a number where it is not known. */
export interface ProgrammedWater {
  readonly litres: Float64Array;
  /** 1 where a controller computed its own times: then it is the need */
  readonly isEstimate: Uint8Array;
  readonly litresOfZones: readonly number[];
  /** the same by zone and day */
  readonly byZone: readonly Float64Array[];
}

/** What the settings put out by the flows on record, day by day; not known where zones are not assigned, or one's flow or settings are not known. */
export function programmedWater(replayed: Replayed, zones: readonly AccountZone[] | null): ProgrammedWater {
  const { days } = replayed.calendar;
  const litres = new Float64Array(days);
  const isEstimate = new Uint8Array(days);
  if (!zones?.length) return { litres: litres.fill(Number.NaN), isEstimate, litresOfZones: [], byZone: [] };
  const byZone: Float64Array[] = [];
  const litresOfZones = zones.map((zone) => {
    const { own, unknown } = waterOfZone(replayed, zone);
    byZone.push(own);
    let whole = 0;
    for (let day = 0; day < days; day++) {
      litres[day]! += own[day]!;
      if (unknown[day] === 'settings-from-weather') isEstimate[day] = 1;
      if (!Number.isNaN(own[day])) whole += own[day]!;
    }
    return whole;
  });
  return { litres, isEstimate, litresOfZones, byZone };
}

const NONE_KNOWN: ReplayedController['unknown'] = [];

/** What a zone was given by day; nothing is known of it without a controller. [L] */
function waterOfZone({ calendar, controllers, neededOf }: Replayed, zone: AccountZone) {
  const own = new Float64Array(calendar.days);
  const controller = controllers.find(({ id }) => id === zone.controllerId);
  if (!controller) return { own: own.fill(Number.NaN), unknown: NONE_KNOWN };
  const { unknown } = controller;
  const minutes = zone.station === null ? null : controller.minutesOf(zone.station);
  const flow = zone.flowLPerMin ?? Number.NaN;
  const needed = unknown.includes('settings-from-weather') ? neededOf(zone) : null;
  // What never ran passed nothing, whatever its flow.
  const replayed = (day: number): number => (minutes?.[day] ? minutes[day]! * flow : 0);
  for (let day = 0; day < own.length; day++) own[day] = waterOfDay(unknown[day] ?? null, needed?.[day], replayed(day));
  return { own, unknown };
}

function waterOfDay(reason: UnknownDay | null, needed: number | undefined, replayed: number): number {
  if (reason === 'settings-from-weather') return needed ?? Number.NaN;
  return reason === null ? replayed : Number.NaN;
}
