// What the plants needed from irrigation, day by day, with the weather that came: gallons.
import { WATER_IN_PER_IN } from './zone.mjs';

const GALLONS_PER_IN_SQFT = 0.6233;

/** Gallons the zone asks for when one inch is missing in its root zone, the uneven pattern and the leaching included. */
export const gallonsPerInch = (zone) => (zone.area * GALLONS_PER_IN_SQFT) / ((0.4 + 0.6 * zone.du) * (1 - zone.leaching));

/**
 * @param zone a full zone
 * @param weather one station's days
 * @returns {Map<number, number>} gallons needed by day
 */
export function needByDay(zone, weather) {
  const ready = WATER_IN_PER_IN[zone.soil] * zone.rootIn * zone.depletion;
  const perInch = gallonsPerInch(zone);
  const need = new Map();
  let missing = ready;
  for (const { day, eto, rain } of weather) {
    const useful = rain > 0.2 * eto ? rain / 25.4 : 0;
    missing = Math.max(0, missing + (zone.factor * zone.climate * eto) / 25.4 - useful);
    const asked = Math.max(0, missing - ready);
    missing -= asked;
    need.set(day, asked * perInch);
  }
  return need;
}

/** Sum of a day map over some days. */
export const sumOver = (byDay, days) => days.reduce((sum, day) => sum + (byDay.get(day) ?? 0), 0);
