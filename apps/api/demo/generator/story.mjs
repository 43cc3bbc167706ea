// The four volumes of every property for a month, by the demo's own arithmetic: to see that the stories hold. Printed, never written.
import { daysOfMonth, LAST_DAY } from './sky/calendar.mjs';
import { gallonsIn, programmedIn } from './meters/flow-through.mjs';
import { sumOver } from './ground/soil-balance.mjs';

function allowedIn(property, days, monthDays) {
  const { etaf, special = 0, contract } = property.allowance;
  if (contract) return (contract[Number(new Date(days[0] * 86_400_000).getUTCMonth())] * days.length) / monthDays;
  const area = property.zones.reduce((sum, zone) => sum + zone.area, 0);
  const eto = days.reduce((sum, day) => sum + property.weatherOf.get(day).eto, 0) / 25.4;
  return eto * 0.62 * (etaf * area + (1 - etaf) * special);
}

/** @returns allowed, needed, programmed and metered gallons, and the zones' over and under */
export function accountOf(property, month) {
  const days = daysOfMonth(month, LAST_DAY);
  const run = programmedIn(property, days[0], days.at(-1));
  const metered = property.zones.filter((zone) => zone.meter !== 'none');
  const gaps = metered.filter((zone) => zone.controller).map((zone) => run.get(zone.name) - sumOver(zone.need, days));
  const indoor = property.meters.reduce((sum, meter) => sum + (meter.indoor?.gallons ?? 0), 0) * days.length;
  const through = property.meters
    .filter((meter) => !meter.removed)
    .reduce((sum, meter) => sum + gallonsIn(meter.flow, days[0], days.at(-1)), 0);
  return {
    allowed: allowedIn(property, days, daysOfMonth(month).length),
    needed: metered.reduce((sum, zone) => sum + sumOver(zone.need, days), 0),
    programmed: [...run.values()].reduce((sum, gallons) => sum + gallons, 0),
    metered: through - indoor,
    over: gaps.reduce((sum, gap) => sum + Math.max(0, gap), 0),
    under: gaps.reduce((sum, gap) => sum + Math.max(0, -gap), 0),
  };
}

const cells = (account) => Object.values(account).map((gallons) => (gallons / 1000).toFixed(1).padStart(8));

export function printStory(world, months) {
  for (const month of months) {
    console.log(`\n${world.folder}, ${month}, thousand gallons:  allowed needed programmed metered | over under | M-N  (M-N)/N`);
    let total = 0;
    for (const property of world.properties) {
      const account = accountOf(property, month);
      const gap = account.metered - account.needed;
      total += Math.max(0, gap);
      console.log(
        property.name.padEnd(26),
        ...cells(account),
        (gap / 1000).toFixed(1).padStart(8),
        `${((100 * gap) / account.needed).toFixed(0)} %`.padStart(7),
      );
    }
    console.log(`above need in all: ${(total / 1000).toFixed(0)} thousand gallons`);
  }
}
