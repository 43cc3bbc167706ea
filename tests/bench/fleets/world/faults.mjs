// What goes wrong on a property, and when. Sizes are drawn so that every tenfold from 2 % to 300 % of the usual month is as likely.
import { startOfDay } from '../../../../apps/api/demo/generator/sky/calendar.mjs';
import { diceFor } from '../../../../apps/api/demo/generator/sky/random.mjs';
import { weighted } from './property.mjs';

export const DAYS_A_MONTH = 30.44;
const MINUTES_A_MONTH = DAYS_A_MONTH * 1440;
const [SMALLEST, LARGEST] = [0.02, 3];
/** Share of faulty properties on which a second thing goes wrong. */
const TWICE = 0.12;
/** A property has this many days before anything goes wrong, so that it has a history. */
const QUIET_DAYS = 90;

const HOLE_GPM = [0.1, 8];

const logBetween = (dice, low, high) => low * (high / low) ** dice.uniform();

function watered(property, dice) {
  const zones = property.zones.filter((zone) => zone.meter !== 'none');
  return zones.length ? dice.pick(zones) : null;
}
const standing = (property, dice) => dice.pick(property.meters.filter((meter) => !meter.removed));
const days = (count) => count * 1440;
/** Two in five are repaired; the others last. */
const lasting = (dice) => (dice.uniform() < 0.4 ? days(dice.whole(30, 120)) : Number.POSITIVE_INFINITY);

/** Each gives what the fault does, or null where the property has nothing that it could befall. `size` is a share of the usual month. */
const MAKERS = {
  'continuous leak': ({ property, dice, size, usual }) => ({
    ...{ meter: standing(property, dice).name, gpm: leakFlow(dice, size, usual), lasts: lasting(dice) },
  }),
  'slow leak': ({ property, dice, size, usual }) => ({
    ...{
      meter: standing(property, dice).name,
      gpm: (size * usual) / MINUTES_A_MONTH,
      lasts: lasting(dice),
      growsFor: days(dice.whole(40, 120)),
    },
  }),
  'pressurised leak': ({ property, dice, size, usual }) => ({
    ...{ meter: standing(property, dice).name, pressed: size * usual, lasts: lasting(dice) },
  }),
  'broken head': ({ property, dice }) => onZone(property, dice, { factor: 1 + logBetween(dice, 0.25, 3), lasts: lasting(dice) }),
  clogged: ({ property, dice }) => onZone(property, dice, { factor: 1 - dice.between(0.25, 0.8), lasts: lasting(dice) }),
  'valve not opening': ({ property, dice }) => onZone(property, dice, { factor: 0, lasts: days(dice.whole(30, 150)) }),
  'stuck valve': ({ property, dice, size, usual }) => {
    const found = onZone(property, dice, { stuck: true });
    return found && { ...found, lasts: Math.min(days(20), Math.max(days(0.5), (size * usual) / found.zone.trueFlow)) };
  },
  'unrecorded run': ({ property, dice, size, usual }) =>
    dice.uniform() < 0.5 ? raised(property, dice, size) : extraRun(property, dice, size, usual),
  'controller off': ({ property, dice }) => ({ controller: dice.pick(property.controllers), factor: 0, lasts: days(dice.whole(14, 60)) }),
  misread: ({ property, dice }) => (reads(property) ? { misread: true, meter: standing(property, dice).name, lasts: 0 } : null),
  'stuck register': ({ property, dice }) =>
    reads(property) ? { standsStill: true, meter: standing(property, dice).name, lasts: days(dice.whole(65, 130)) } : null,
  'stuck feed': ({ property, dice }) =>
    property.fed ? { silent: true, meter: standing(property, dice).name, lasts: days(dice.whole(4, 20)) } : null,
};
const WEIGHTS = {
  ...{ 'continuous leak': 17, 'slow leak': 6, 'pressurised leak': 6, 'broken head': 15, clogged: 8, 'valve not opening': 6 },
  ...{ 'stuck valve': 8, 'unrecorded run': 13, 'controller off': 5, misread: 12, 'stuck register': 3, 'stuck feed': 2 },
};
export const faultKinds = Object.keys(MAKERS);

/** By its share of the month, or by its hole: a drip to a broken riser, yet no more than the largest share. */
function leakFlow(dice, size, usual) {
  const most = (LARGEST * usual) / MINUTES_A_MONTH;
  return dice.uniform() < 0.5 ? (size * usual) / MINUTES_A_MONTH : Math.min(most, logBetween(dice, ...HOLE_GPM));
}

const reads = (property) => ['readings', 'both'].includes(property.metering);

function onZone(property, dice, does) {
  const zone = watered(property, dice);
  return zone && { zone, controller: zone.controller, meter: zone.meter, ...does };
}

/** Somebody raised the minutes of a controller and told nobody. */
function raised(property, dice, size) {
  return { controller: dice.pick(property.controllers), factor: 1 + size, isRun: true, lasts: days(dice.whole(40, 150)) };
}

/** Somebody added a program of one zone and told nobody: at its own hour, daily or every few days. */
function extraRun(property, dice, size, usual) {
  const zone = watered(property, dice);
  if (!zone) return null;
  const every = dice.pick([1, 1, 2, 3, 7]);
  const minutes = Math.min(600, Math.max(2, (size * usual * every) / DAYS_A_MONTH / zone.trueFlow));
  const runs = { every, at: dice.pick([9, 11, 13, 14, 16, 18]) * 60 + dice.pick([0, 15, 30]), minutes };
  return { zone, controller: zone.controller, meter: zone.meter, runs, lasts: days(dice.whole(40, 150)) };
}

/**
 * @param property drawn, with its timers set
 * @param fleet its days and the kinds that are wanted
 * @param {number} usual gallons of the usual month
 * @returns faults with start and end in wall-clock minutes
 */
export function drawFaults(property, fleet, usual) {
  const dice = diceFor(`faults ${fleet.seed} ${property.name}`);
  const count = dice.uniform() < fleet.faulty ? (dice.uniform() < TWICE ? 2 : 1) : 0;
  const kinds = faultKinds.filter((kind) => !fleet.only || fleet.only.includes(kind));
  const faults = [];
  for (let at = 0; at < count; at += 1) {
    const kind = weighted(
      dice,
      kinds.map((each) => [each, WEIGHTS[each]]),
    ); // prettier-ignore
    const fault = MAKERS[kind]({ property, dice, usual, size: logBetween(dice, SMALLEST, LARGEST) });
    const start = startOfDay(fleet.from + QUIET_DAYS) + Math.floor(dice.uniform() * days(fleet.last - fleet.from - QUIET_DAYS - 20));
    if (!fault || faults.some((other) => other.kind === kind)) continue;
    faults.push({ kind, ...fault, start, end: Math.min(start + fault.lasts, startOfDay(fleet.last + 1)) });
  }
  return faults;
}
