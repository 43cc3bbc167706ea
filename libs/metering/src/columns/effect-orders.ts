import { OTHER_INPUTS, ZONE_INPUTS } from './account-columns.js';

/**
 * The order in which the effects of inputs are summed, as places: that in which the objects of `UncertainLitres` come to them, so that the
 * sums are the same to the last bit.
 */
export interface EffectOrders {
  /** of the volumes */
  readonly allowed: Int32Array;
  readonly needed: Int32Array;
  readonly programmed: Int32Array;
  readonly metered: Int32Array;
  /** of the gaps, in the order of `Volumes` */
  readonly gaps: readonly Int32Array[];
  /** place of the first input that is no zone's */
  readonly others: number;
  /** place of the first controller's filled settings */
  readonly filledSettings: number;
}

/**
 * The orders of the effects of some zones.
 *
 * @param isDerived - Whether each zone's flow was derived from precipitation rate and area: then its program errs with the area too. [–]
 * @param filledFrom - For each controller the first of its zones into which something is filled where settings are not known; -1 for none. [–]
 * @returns Places of inputs in the order in which they are summed. [–]
 */
export function effectOrders(isDerived: readonly boolean[], filledFrom: readonly number[]): EffectOrders {
  const pattern = `${isDerived.map(Number).join('')} ${filledFrom.join()}`;
  const orders = known.get(pattern) ?? ordersOf(isDerived, filledFrom);
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(pattern, orders);
  return orders;
}

/** Properties with as many zones, none of whose flows was derived, have the same orders: many of a portfolio do. */
const known = new Map<string, EffectOrders>();
const MOST_KNOWN = 100;

function ordersOf(isDerived: readonly boolean[], filledFrom: readonly number[]): EffectOrders {
  const others = ZONE_INPUTS.length * isDerived.length;
  const other = (...names: readonly (typeof OTHER_INPUTS)[number][]) => names.map((name) => others + OTHER_INPUTS.indexOf(name));
  const ofZone = (zone: number, ...names: readonly (typeof ZONE_INPUTS)[number][]) =>
    names.map((name) => ZONE_INPUTS.length * zone + ZONE_INPUTS.indexOf(name));
  const needed = isDerived.flatMap((_, zone) => [
    ...ofZone(zone, 'area', 'uniformity', 'plantFactor', 'rootStorage'),
    ...(zone === 0 ? other('eto', 'rain') : []),
  ]);
  const filledSettings = others + OTHER_INPUTS.length;
  const programmed = isDerived.flatMap((derived, zone) => [
    ...(derived ? ofZone(zone, 'flow', 'area') : ofZone(zone, 'flow')),
    ...filledFrom.flatMap((first, controller) => (first === zone ? [filledSettings + controller] : [])),
  ]);
  const allowed = [...other('eto', 'filledWeather'), ...isDerived.flatMap((_, zone) => ofZone(zone, 'area'))];
  const metered = other('meter', 'registerResolution', 'apportioning', 'indoor', 'filledReadings');
  const both = (more: readonly number[], less: readonly number[]) => Int32Array.from(new Set([...more, ...less]));
  return {
    allowed: Int32Array.from(allowed),
    needed: Int32Array.from(needed),
    programmed: Int32Array.from(programmed),
    metered: Int32Array.from(metered),
    gaps: [both(needed, allowed), both(programmed, needed), both(metered, programmed), both(metered, needed), both(metered, allowed)],
    others,
    filledSettings,
  };
}
