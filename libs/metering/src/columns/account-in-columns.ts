import type { ControllerReplay } from '@rillbook/irrigation/settings/replay/replay-controller.js';
import type { AccountFacts, AccountMeter } from '../account/account-input.js';
import { notesBesideZones } from '../account/account-notes.js';
import { allowedOfZones } from '../account/allowed-of-zones.js';
import { type MeteredOfMeter, meteredOfMeter } from '../account/metered-of-meter.js';
import type { PreparedMonth } from '../account/needed/prepared-months.js';
import { replayOfMonth } from '../account/needed/replay-of-month.js';
import type { Figure } from '../volumes/figure.js';
import { type AccountColumns, columnPlaces } from './account-columns.js';
import { effectOrders } from './effect-orders.js';
import { fillSettings } from './filled-settings.js';
import { roomFor, sumVolumes, writeGaps, writeVolumes } from './sums-of-zones.js';
import { type Room, writeZones } from './zones-of-month.kernel.js';
import { zoneColumns, type ZoneColumns } from './zone-columns.js';

/**
 * The month account of a month that was prepared together with others of the same property, in columns: the same numbers as `accountOfMonth`.
 *
 * @param input - Zones, controllers with their settings, meters with their intervals, and the allowance. [code]
 * @param prepared - The month with its weather and what its zones needed. [mm]
 * @returns The account; null where it has to be computed zone by zone, as one meter does not measure all zones, weather is not known on some
 * day or settings on too many, metered water is not known at all, a sensor held starts back, a controller went by the weather, or someone
 * waters by hand. [L]
 * @throws {DomainError} As `accountOfMonth`.
 */
export function accountInColumns(input: AccountFacts, prepared: PreparedMonth): AccountColumns | null {
  const month = prepared.covered;
  if (month.days === 0 || month.missing.missingDays > 0) return null;
  const of = columnsOf(input);
  if (!of) return null;
  const replays = replaysOf(input, prepared);
  const room = roomFor(of.zones.length, of.ofController.length);
  if (!replays || !fillSettings(of, replays, prepared, room.filledOfZone)) return null;
  const metered = meteredOfMeter(input.meters[0] as AccountMeter, month, () => neededByDay(of, prepared));
  if (!metered.figure.value) return null;
  const irrigatedAreaM2 = of.zones.reduce((sum, { areaM2 }) => sum + areaM2, 0);
  const special = input.allowance?.from === 'ordinance' ? Math.min(input.allowance.specialLandscapeAreaM2, irrigatedAreaM2) : 0;
  const allowed = allowedOfZones(of.zones, { allowance: input.allowance, specialLandscapeAreaM2: special }, month);
  return written(withFilled(of, room), input, prepared, { replays, metered, allowed, room });
}

// Where something is filled in, that is one more input of the controller's zones.
function withFilled(of: ZoneColumns, { filledOfZone }: Room): ZoneColumns {
  if (filledOfZone.every((litres) => litres === 0)) return of;
  const filledFrom = of.ofController.map((own) => own.find((zone) => filledOfZone[zone] !== 0) ?? -1);
  return {
    ...of,
    orders: effectOrders(
      of.frame.zones.map(({ isDerived }) => isDerived),
      filledFrom,
    ),
  };
}

interface Known {
  readonly replays: ReadonlyMap<string, ControllerReplay>;
  readonly metered: MeteredOfMeter;
  readonly allowed: Figure;
  readonly room: Room;
}

function written(
  of: ZoneColumns,
  input: AccountFacts,
  prepared: PreparedMonth,
  { replays, metered, allowed, room }: Known,
): AccountColumns {
  const { covered: month, depths } = prepared;
  const zones = of.zones.length;
  const places = columnPlaces(zones, of.ofController.length);
  const numbers = new Float64Array(places.length);
  const causes = new Int16Array(places.causes).fill(-1);
  const programs = new ProgramSets(zones);
  of.frame.zones.forEach(({ controllerId, station }, zone) => {
    const ran = replays.get(controllerId)?.stations.get(station);
    numbers[places.runs + zone] = ran?.totalRuns ?? 0;
    numbers[places.minutes + zone] = ran?.totalMinutes ?? 0;
    programs.ran(zone, ran?.programs ?? []);
  });
  writeZones(of, depths, month.missing.filledDays, { numbers, room, places });
  const sums = sumVolumes(of, { metered: metered.figure, allowed }, { numbers, room, places });
  writeVolumes(of, sums, { numbers, room, places });
  writeGaps(of, sums, { numbers, causes, room, places });
  const share = (at: number) => ({ estimatedShare: numbers[at] as number });
  return {
    frame: of.frame,
    month: input.month,
    firstDay: month.firstDay,
    days: month.days,
    daysInMonth: month.daysInMonth,
    meteredThrough: metered.meteredThrough,
    notAllowed: allowed.reason,
    programSets: programs.sets,
    programSet: programs.ofZone,
    notes: notesBesideZones({
      input,
      month,
      property: { allowed: share(2), needed: share(5), programmed: share(8), metered: share(11), settingsGap: { estimate: null } },
      meters: [[of.frame.meterId, metered]],
    }),
    numbers,
    causes,
  };
}

/** The sets of programs that ran zones: mostly one. */
class ProgramSets {
  readonly sets: (readonly string[])[] = [];
  readonly ofZone: Uint8Array;

  constructor(zones: number) {
    this.ofZone = new Uint8Array(zones);
  }

  ran(zone: number, programs: readonly string[]): void {
    let at = this.sets.findIndex((set) => set.length === programs.length && set.every((name, place) => name === programs[place]));
    if (at < 0) at = this.sets.push(programs) - 1;
    this.ofZone[zone] = at;
  }
}

/** Zones that are the same in many months are the same array. */
const known = new WeakMap<
  AccountFacts['zones'],
  { readonly meterId: string | undefined; readonly controllerIds: string; readonly columns: ZoneColumns | null }
>();

function columnsOf(input: AccountFacts): ZoneColumns | null {
  const controllerIds = input.controllers.map(({ id }) => id).join();
  const meterId = input.meters.length === 1 ? input.meters[0]?.id : undefined;
  const present = known.get(input.zones);
  if (present && present.meterId === meterId && present.controllerIds === controllerIds) return present.columns;
  const columns = zoneColumns(input);
  known.set(input.zones, { meterId, controllerIds, columns });
  return columns;
}

function replaysOf({ controllers, clockChanges }: AccountFacts, prepared: PreparedMonth): ReadonlyMap<string, ControllerReplay> | null {
  const replays = new Map<string, ControllerReplay>();
  for (const controller of controllers) {
    const { most, least, withoutSensor, unsure } = replayOfMonth(controller, prepared, clockChanges);
    if (most !== least || most !== withoutSensor || most !== unsure) return null;
    replays.set(controller.id, most);
  }
  return replays;
}

// A meter whose readings leave holes asks for the need of each day, all of whose weather is known.
function neededByDay({ litresPerMm }: ZoneColumns, { covered, depths }: PreparedMonth): readonly number[] {
  return Array.from({ length: covered.days }, (_, day) =>
    depths.reduce((sum, { ofDays }, zone) => sum + (ofDays[day] as number) * (litresPerMm[zone] as number), 0),
  );
}
