import type { Figure } from '../volumes/figure.js';
import { GAP_CAUSES, GAP_NUMBERS, OTHER_INPUTS, ZONE_INPUTS } from './account-columns.js';
import { rankedEffects } from './ranked-effects.kernel.js';
import type { ZoneColumns } from './zone-columns.js';
import type { Room, Written } from './zones-of-month.kernel.js';

/** Litres of the four volumes and how much of each is estimated. [L] */
export interface VolumeSums {
  readonly allowed: Figure;
  readonly needed: readonly [litres: number, estimated: number];
  readonly programmed: readonly [litres: number, estimated: number];
  readonly metered: readonly [litres: number, estimated: number];
}

let room: Room | null = null;

/**
 * Room for a month of so many zones, empty.
 *
 * @param zones - Number of zones. [–]
 * @param controllers - Number of their controllers. [–]
 * @returns The room: one for all months, as one is computed at a time. [L]
 */
export function roomFor(zones: number, controllers: number): Room {
  const length = ZONE_INPUTS.length * zones + OTHER_INPUTS.length + controllers;
  if (room?.needed.length !== length || room.etoOfZone.length !== zones) {
    const inputs = () => new Float64Array(length);
    const ofZones = () => new Float64Array(zones);
    const effects = { needed: inputs(), programmed: inputs(), metered: inputs(), allowed: inputs(), side: inputs(), nothing: inputs() };
    const sums = { etoOfZone: ofZones(), rainOfZone: ofZones(), estimatedOfZone: ofZones() };
    room = { ...effects, ...sums, filledOfZone: ofZones(), fillSdOfZone: ofZones() };
  }
  room.metered.fill(0);
  room.allowed.fill(0);
  return room;
}

/**
 * Sums of the zones, and the effects of the inputs that are no zone's: `combined` on columns.
 *
 * @param of - The zones. [code]
 * @param figures - The volumes that are no sums of zones. [L]
 * @param figures.metered - What was metered. [L]
 * @param figures.allowed - What is allowed. [L]
 * @param written - Where the zones' numbers stand; the effects are written to. [L]
 * @returns The sums of the zones beside what was metered and is allowed. [L]
 */
export function sumVolumes(of: ZoneColumns, figures: { readonly metered: Figure; readonly allowed: Figure }, written: Written): VolumeSums {
  const { metered, allowed } = figures;
  const { numbers, room: effects, places } = written;
  const { others } = of.orders;
  const zones = of.zones.length;
  const sum = (column: Float64Array, from: number) => {
    let total = 0;
    for (let at = from; at < from + zones; at += 1) total += column[at] as number;
    return total;
  };
  effects.needed[others] = sum(effects.etoOfZone, 0);
  effects.needed[others + 1] = sum(effects.rainOfZone, 0);
  of.ofController.forEach((own, controller) => {
    effects.programmed[of.orders.filledSettings + controller] = fillSdOf(own, effects);
  });
  of.orders.metered.forEach((place, at) => {
    effects.metered[place] = metered.value?.effects[at] ?? 0;
  });
  of.orders.allowed.forEach((place, at) => {
    effects.allowed[place] = allowed.value?.effects[at] ?? 0;
  });
  return {
    allowed,
    needed: [sum(numbers, places.needed), sum(effects.estimatedOfZone, 0)],
    programmed: [sum(numbers, places.programmed), sum(effects.filledOfZone, 0)],
    metered: [metered.value?.litres ?? Number.NaN, metered.filledLitres],
  };
}

/**
 * The four volumes with their standard deviations, and the zones' over and under.
 *
 * @param of - The zones. [code]
 * @param sums - The volumes. [L]
 * @param written - Written to: the volumes' numbers. [L]
 * @returns Nothing: `written` holds the result. [–]
 */
export function writeVolumes(of: ZoneColumns, sums: VolumeSums, written: Written): void {
  const { numbers, room: effects, places } = written;
  const volume = (at: number, [litres, estimated]: readonly [number, number], order: Int32Array, own: Float64Array) => {
    let variance = 0;
    for (let each = 0; each < order.length; each += 1) variance += (own[order[each] as number] as number) ** 2;
    numbers[at] = litres;
    numbers[at + 1] = Math.sqrt(variance);
    numbers[at + 2] = estimated === 0 ? 0 : Math.min(1, Math.abs(estimated / litres));
  };
  const { allowed } = sums;
  if (allowed.value) volume(0, [allowed.value.litres, allowed.filledLitres], of.orders.allowed, effects.allowed);
  volume(3, sums.needed, of.orders.needed, effects.needed);
  volume(6, sums.programmed, of.orders.programmed, effects.programmed);
  volume(9, sums.metered, of.orders.metered, effects.metered);
  let [over, under] = [0, 0];
  for (let zone = 0; zone < of.zones.length; zone += 1) {
    const gap = (numbers[places.programmed + zone] as number) - (numbers[places.needed + zone] as number);
    over += Math.max(0, gap);
    under += Math.max(0, -gap);
  }
  numbers[places.over] = over;
  numbers[places.under] = under;
}

/**
 * The gaps between the volumes, and over and under of each controller, with the inputs that they come from.
 *
 * @param of - The zones. [code]
 * @param sums - The volumes. [L]
 * @param written - Written to: the gaps' numbers and causes. [L]
 * @returns Nothing: `written` holds the result. [–]
 */
export function writeGaps(of: ZoneColumns, sums: VolumeSums, written: Written & { readonly causes: Int16Array }): void {
  const { numbers, causes, room: effects, places } = written;
  const [needed, programmed, metered] = [sums.needed[0], sums.programmed[0], sums.metered[0]];
  const allowed = sums.allowed.value?.litres ?? null;
  const gap = (nth: number, litres: number | null, order: Int32Array, more: Float64Array, less: Float64Array) => {
    if (litres === null) return;
    const at = places.gaps + GAP_NUMBERS * nth;
    numbers[at] = litres;
    rankedEffects(order, more, less, { numbers, at: at + 1, causes, causesAt: GAP_CAUSES * nth });
  };
  const [landscape, settings, unexplained, overNeeded, overAllowed] = of.orders.gaps as readonly [
    Int32Array,
    Int32Array,
    Int32Array,
    Int32Array,
    Int32Array,
  ];
  gap(0, allowed === null ? null : needed - allowed, landscape, effects.needed, effects.allowed);
  gap(1, programmed - needed, settings, effects.programmed, effects.needed);
  gap(2, metered - programmed, unexplained, effects.metered, effects.programmed);
  gap(3, metered - needed, overNeeded, effects.metered, effects.needed);
  gap(4, allowed === null ? null : metered - allowed, overAllowed, effects.metered, effects.allowed);
  of.ofController.forEach((zones, controller) => {
    for (const [side, sign] of [1, -1].entries()) {
      const own = zones.filter((zone) => sign * gapOfZone(written, zone) > 0);
      const litres = own.reduce((sum, zone) => sum + sign * gapOfZone(written, zone), 0);
      writeSide(own, sign, of, effects);
      effects.side[of.orders.filledSettings + controller] = sign * fillSdOf(own, effects);
      gap(5 + 2 * controller + side, litres, orderOf(own, of, controller, effects), effects.side, effects.nothing);
    }
  });
}

const gapOfZone = ({ numbers, places }: Written, zone: number): number =>
  (numbers[places.programmed + zone] as number) - (numbers[places.needed + zone] as number);

// What the zones of one controller have filled in errs together.
function fillSdOf(zones: Int32Array, { fillSdOfZone }: Room): number {
  let sd = 0;
  for (const zone of zones) sd += fillSdOfZone[zone] as number;
  return sd;
}

// As a zone's program comes before its need: flow, area, the rest of the need; with the first zone the weather, and with the first into which
// something is filled what is filled in, after what its program errs with.
function orderOf(zones: Int32Array, { orders, frame }: ZoneColumns, controller: number, { fillSdOfZone }: Room): Int32Array {
  const filledFrom = zones.find((zone) => fillSdOfZone[zone] !== 0);
  const order = new Int32Array(zones.length === 0 ? 0 : 5 * zones.length + (filledFrom === undefined ? 2 : 3));
  let next = 0;
  const add = (place: number) => {
    order[next] = place;
    next += 1;
  };
  zones.forEach((zone, at) => {
    const isDerived = frame.zones[zone]?.isDerived === true;
    add(5 * zone + 4);
    if (isDerived) add(5 * zone);
    if (zone === filledFrom) add(orders.filledSettings + controller);
    if (!isDerived) add(5 * zone);
    for (const input of [1, 2, 3]) add(5 * zone + input);
    if (at > 0) return;
    add(orders.others);
    add(orders.others + 1);
  });
  return order;
}

// Each zone's program less its need; the weather is one input of all of them.
function writeSide(zones: Int32Array, sign: number, of: ZoneColumns, { side, programmed, needed, etoOfZone, rainOfZone }: Room): void {
  const { others } = of.orders;
  let [eto, rain] = [0, 0];
  for (const zone of zones) {
    for (let place = 5 * zone; place < 5 * zone + 5; place += 1)
      side[place] = sign * ((programmed[place] as number) - (needed[place] as number));
    eto -= sign * (etoOfZone[zone] as number);
    rain -= sign * (rainOfZone[zone] as number);
  }
  side[others] = eto;
  side[others + 1] = rain;
}
