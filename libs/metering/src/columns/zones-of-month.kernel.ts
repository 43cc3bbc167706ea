import type { NeededDepths } from '../volumes/needing-zone.js';
import { defaultRelativeSd } from '../uncertainty/default-relative-sd.js';
import type { columnPlaces } from './account-columns.js';
import type { ZoneColumns } from './zone-columns.js';

/**
 * Room for what is computed once for a month and not kept: the effect of each input on each volume, by place, and what reference
 * evapotranspiration and rain do to each zone.
 */
export interface Room {
  readonly needed: Float64Array;
  readonly programmed: Float64Array;
  readonly metered: Float64Array;
  readonly allowed: Float64Array;
  readonly side: Float64Array;
  readonly nothing: Float64Array;
  readonly etoOfZone: Float64Array;
  readonly rainOfZone: Float64Array;
  readonly estimatedOfZone: Float64Array;
  /** what is filled into each zone's program, and its effect */
  readonly filledOfZone: Float64Array;
  readonly fillSdOfZone: Float64Array;
}

/** Where the numbers of a month are written. */
export interface Written {
  readonly numbers: Float64Array;
  readonly room: Room;
  readonly places: ReturnType<typeof columnPlaces>;
}

/**
 * Need and program of each zone with their effects and standard deviations: `neededOfZone`, `programmedOfZone` and `zoneLine` on columns.
 *
 * Runs and minutes of the zones stand in `numbers` already, and in `room` what is filled into their programs.
 *
 * @param of - The zones. [code]
 * @param depths - Net depths that the zones needed, of a month without a day of unknown weather. [mm]
 * @param filledDays - Days whose weather the station itself did not measure. [d]
 * @param written - Written to: the zones' columns, and the effects of their inputs. [L]
 * @returns Nothing: `written` holds the result. [–]
 */
export function writeZones(of: ZoneColumns, depths: readonly NeededDepths[], filledDays: readonly number[], written: Written): void {
  const { numbers, room, places } = written;
  const { litresPerMm, areaSd, uniformityEffect, flowLPerMin, flowSd, frame } = of;
  for (let zone = 0; zone < litresPerMm.length; zone += 1) {
    const { netMm, moved, ofDays } = depths[zone] as NeededDepths;
    const perMm = litresPerMm[zone] as number;
    const needed = netMm * perMm;
    const minutes = numbers[places.minutes + zone] as number;
    const known = minutes * (flowLPerMin[zone] as number);
    const filled = room.filledOfZone[zone] as number;
    // What is filled in stretches what ran.
    const programmed = filled === 0 ? known : minutes * ((flowLPerMin[zone] as number) * (known > 0 ? 1 + filled / known : 1));
    const fill = filled * defaultRelativeSd.filled;
    const area = needed * (areaSd[zone] as number);
    const uniformity = needed * (uniformityEffect[zone] as number);
    const plantFactor = moved.plantFactor * perMm;
    const rootStorage = moved.rootStorage * perMm;
    const eto = moved.eto * perMm;
    const rain = moved.rain * perMm;
    const flow = programmed * (flowSd[zone] as number);
    const isDerived = frame.zones[zone]?.isDerived === true;
    const flowArea = isDerived ? programmed * (areaSd[zone] as number) : 0;
    const gapArea = flowArea - area;
    const at = 5 * zone;
    room.needed[at] = area;
    room.needed[at + 1] = uniformity;
    room.needed[at + 2] = plantFactor;
    room.needed[at + 3] = rootStorage;
    room.programmed[at] = flowArea;
    room.programmed[at + 4] = flow;
    room.etoOfZone[zone] = eto;
    room.rainOfZone[zone] = rain;
    let estimatedMm = 0;
    for (let day = 0; day < filledDays.length; day += 1) estimatedMm += ofDays[filledDays[day] as number] ?? 0;
    const estimated = estimatedMm * perMm;
    room.estimatedOfZone[zone] = estimated;
    room.fillSdOfZone[zone] = fill;
    const shared = uniformity * uniformity;
    numbers[places.needed + zone] = needed;
    numbers[places.neededSd + zone] = Math.sqrt(
      area * area + shared + plantFactor * plantFactor + rootStorage * rootStorage + eto * eto + rain * rain,
    );
    numbers[places.programmed + zone] = programmed;
    numbers[places.programmedSd + zone] = Math.sqrt(flow * flow + flowArea * flowArea + fill * fill);
    const ofFlow = isDerived ? flow * flow + gapArea * gapArea + fill * fill : flow * flow + fill * fill + gapArea * gapArea;
    numbers[places.gapSd + zone] = Math.sqrt(
      ofFlow + shared + plantFactor * plantFactor + rootStorage * rootStorage + eto * eto + rain * rain,
    );
    numbers[places.estimatedShare + zone] = estimated + filled > 0 ? (estimated + filled) / (needed + programmed) : 0;
  }
}
