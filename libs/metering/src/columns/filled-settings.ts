import type { ControllerReplay } from '@rillbook/irrigation/settings/replay/replay-controller.js';
import type { PreparedMonth } from '../account/needed/prepared-months.js';
import { isTooMuchMissing } from '../volumes/fill-missing-days.js';
import type { ZoneColumns } from './zone-columns.js';

/**
 * What is filled into each zone's program for the days on which its controller's settings are not known: `fillMissingDays` on columns, in
 * proportion to the zone's need, else to days.
 *
 * @param of - The zones. [code]
 * @param replays - Their controllers' replays, by id. [min]
 * @param prepared - The month, of which every day's weather is known, and what its zones needed. [mm]
 * @param filled - Written to: litres filled in of each zone. [L]
 * @returns False where too much is missing of a controller, or it went by the weather: then nothing is told. [–]
 */
export function fillSettings(
  of: ZoneColumns,
  replays: ReadonlyMap<string, ControllerReplay>,
  prepared: PreparedMonth,
  filled: Float64Array,
): boolean {
  filled.fill(0);
  for (const [controller, own] of of.ofController.entries()) {
    const replay = replays.get(of.frame.controllerIds[controller] as string);
    if (!replay || replay.unknown.every((reason) => reason === null)) continue;
    const missing = missingShare(replay, prepared);
    if (replay.unknown.includes('settings-from-weather') || isTooMuchMissing(missing)) return false;
    // Days without any evapotranspiration are not filled in.
    if (missing <= 0) continue;
    for (const zone of own) filled[zone] = filledOf(of, zone, replay, prepared);
  }
  return true;
}

// Of the month's ET weight; of its days where they have none.
function missingShare({ unknown }: ControllerReplay, { covered }: PreparedMonth): number {
  let [weight, missing, missingDays] = [0, 0, 0];
  covered.etWeights.forEach((ofDay, day) => {
    weight += ofDay;
    if (unknown[day] === null) return;
    missing += ofDay;
    missingDays += 1;
  });
  return weight > 0 ? missing / weight : missingDays / unknown.length;
}

function filledOf(of: ZoneColumns, zone: number, { unknown, stations }: ControllerReplay, { depths }: PreparedMonth): number {
  const ofDays = depths[zone]?.ofDays ?? [];
  const laid = stations.get(of.frame.zones[zone]?.station as number)?.laidMinutes ?? [];
  const [perMm, flow] = [of.litresPerMm[zone] as number, of.flowLPerMin[zone] as number];
  let [litres, needed, days, neededUnknown, daysUnknown] = [0, 0, 0, 0, 0];
  unknown.forEach((reason, day) => {
    const ofDay = (ofDays[day] as number) * perMm;
    if (reason === null) {
      litres += (laid[day] ?? 0) * flow;
      needed += ofDay;
      days += 1;
    } else {
      neededUnknown += ofDay;
      daysUnknown += 1;
    }
  });
  return needed > 0 ? (litres * neededUnknown) / needed : (litres * daysUnknown) / days;
}
