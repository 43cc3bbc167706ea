import type { UnknownDay } from '@rillbook/irrigation/settings/replay-controller.js';
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
}

/** What the settings put out by the flows on record, day by day; not known where zones are not assigned, or one's flow or settings are not known. */
export function programmedWater(replayed: Replayed, zones: readonly AccountZone[] | null): ProgrammedWater {
  const { days } = replayed.calendar;
  const litres = new Float64Array(days);
  const isEstimate = new Uint8Array(days);
  if (!zones?.length) return { litres: litres.fill(Number.NaN), isEstimate, litresOfZones: [] };
  const litresOfZones = zones.map((zone) => {
    const { waterOf, unknown } = waterOfZone(replayed, zone);
    let whole = 0;
    for (let day = 0; day < days; day++) {
      const own = waterOf(day);
      litres[day]! += own;
      if (unknown[day] === 'settings-from-weather') isEstimate[day] = 1;
      if (!Number.isNaN(own)) whole += own;
    }
    return whole;
  });
  return { litres, isEstimate, litresOfZones };
}

const NONE_KNOWN: ReplayedController['unknown'] = [];

function waterOfZone({ controllers, neededOf }: Replayed, zone: AccountZone) {
  const controller = controllers.find(({ id }) => id === zone.controllerId) ?? null;
  const minutes = zone.station === null ? null : (controller?.minutesOf(zone.station) ?? null);
  const flow = zone.flowLPerMin ?? Number.NaN;
  const unknown = controller?.unknown ?? NONE_KNOWN;
  const needed = unknown.includes('settings-from-weather') ? neededOf(zone) : null;
  // What never ran passed nothing, whatever its flow.
  const replayed = (day: number) => (minutes?.[day] ? minutes[day] * flow : 0);
  return {
    unknown,
    waterOf: (day: number) => waterOfDay(controller ? (unknown[day] ?? null) : 'settings-not-known', needed?.[day], replayed(day)),
  };
}

function waterOfDay(reason: UnknownDay | null, needed: number | undefined, replayed: number): number {
  if (reason === 'settings-from-weather') return needed ?? Number.NaN;
  return reason === null ? replayed : Number.NaN;
}
