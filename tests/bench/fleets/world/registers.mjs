// What was written down of the water: registers on the days of a crew, the supplier's bills, the hourly feed, and what was read wrongly.
import { dateText, instantText, startOfDay } from '../../../../apps/api/demo/generator/sky/calendar.mjs';
import { diceFor } from '../../../../apps/api/demo/generator/sky/random.mjs';
import { GALLONS } from './property.mjs';
import { isFallBack, isSpringForward } from './water.mjs';

/** A misread that changes less than this share of the usual month is drawn again. */
const LEAST_MISREAD = 0.1;

export const gallonsPerUnit = (meter) => GALLONS[meter.unit] * meter.multiplier;
const decimals = (meter) => Math.max(0, Math.round(-Math.log10(meter.resolution)));
const text = (meter, register) => register.toFixed(decimals(meter));

/** Wall-clock minutes of the crew's visits: every 28 to 35 days, some missed, always in the daylight. */
export function drawVisits(property, fleet) {
  const dice = diceFor(`visits ${fleet.seed} ${property.name}`);
  const visits = [];
  for (let day = fleet.from; day <= fleet.last; day += dice.whole(28, 35)) {
    if (visits.length && dice.uniform() < 0.05) continue;
    visits.push(startOfDay(day) + dice.whole(620, 930));
  }
  return visits;
}

/** The dial at a minute in whole steps, and how often it has started again. */
function dial(meter, minute, fleet) {
  const from = startOfDay(meter.installed ?? fleet.from);
  const passed = (meter.bias * (meter.line.until(minute) - meter.line.until(from))) / gallonsPerUnit(meter);
  const steps = Math.floor((meter.first + Math.max(0, passed)) / meter.resolution + 1e-9);
  const full = Math.round(10 ** meter.digits / meter.resolution);
  return { register: (steps % full) * meter.resolution, turns: Math.floor(steps / full) };
}

export const registerText = (meter, minute, fleet) => text(meter, dial(meter, minute, fleet).register);

const WRONG = {
  'digits swapped': ({ register, meter, dice }) => {
    const digits = text(meter, register);
    const at = dice.whole(0, digits.length - 2);
    return Number(digits.slice(0, at) + digits[at + 1] + digits[at] + digits.slice(at + 2));
  },
  'x 10': ({ register, dice }) => (dice.uniform() < 0.5 ? register * 10 : register / 10),
  'x 7.48': ({ register, dice }) => (dice.uniform() < 0.5 ? register * 7.48 : register / 7.48),
  'x 748': ({ register, dice }) => (dice.uniform() < 0.3 ? register * 748 : register / 748),
  "neighbour's register": ({ meter, dice }) => 10 ** meter.digits * dice.uniform(),
  'lower than last': ({ before, interval, dice }) => before - interval * dice.between(0.15, 1.2),
};

/** The register as somebody wrote it wrongly: null where no slip fits the dial and makes a difference. */
function wrongly({ meter, rows, at, usual, dice }) {
  const register = rows[at].register;
  const interval = rows[at].turns === rows[at - 1].turns ? register - rows[at - 1].register : meter.resolution;
  // A slip that cannot be seen or does not fit is tried at other digits, then another slip is drawn.
  let note = dice.pick(Object.keys(WRONG));
  for (let attempt = 1; attempt <= 48; attempt += 1) {
    if (attempt % 12 === 0) note = dice.pick(Object.keys(WRONG));
    const wrong = WRONG[note]({ register, meter, dice, before: rows[at - 1].register, interval });
    if (!(wrong >= 0 && wrong < 10 ** meter.digits)) continue;
    const written = Number(text(meter, Math.round(wrong / meter.resolution) * meter.resolution));
    const share = ((written - register) * gallonsPerUnit(meter)) / usual;
    if (written < 10 ** meter.digits && Math.abs(share) >= LEAST_MISREAD) return { written, note, share };
  }
  return null;
}

function misreadRows(place, meter, rows) {
  const { property, dice, usual } = place;
  for (const fault of property.faults.filter((one) => one.misread && one.meter === meter.name)) {
    const at = rows.findIndex(({ minute }) => minute >= fault.start);
    const wrong = at > 2 ? wrongly({ meter, rows, at, usual, dice }) : null;
    if (!wrong) continue;
    Object.assign(fault, { felt: rows[at].minute, end: rows[at].minute, share: wrong.share, note: wrong.note });
    rows[at] = { ...rows[at], register: wrong.written };
  }
}

/** Rows of readings.csv for a property; notes rollovers on it. */
export function readingRows(property, fleet) {
  if (!['readings', 'both', 'hourly'].includes(property.metering)) return [];
  const dice = diceFor(`readings ${fleet.seed} ${property.name}`);
  // Half of the meters with a feed are read by nobody any more.
  if (property.fed && dice.uniform() < 0.5) return [];
  property.rollovers = [];
  return property.meters.flatMap((meter) => {
    const begin = meter.installed ? startOfDay(meter.installed) + 600 : 0;
    const end = meter.removed ? startOfDay(meter.removed) : Number.POSITIVE_INFINITY;
    const minutes = property.visits.map((visit) => visit + dice.whole(2, 9)).filter((minute) => minute > begin && minute < end);
    const rows = minutes.map((minute) => ({ minute, ...dial(meter, minute, fleet) }));
    for (const [index, row] of rows.entries())
      if (index && row.turns > rows[index - 1].turns) property.rollovers.push({ meter, at: row.minute });
    misreadRows({ property, dice, usual: property.usual }, meter, rows);
    return rows.map(({ minute, register }) => [property.name, meter.name, instantText(minute), text(meter, register), 'crew', '']);
  });
}

/** Rows of bills.csv: whole units of the supplier from one of its reading days to the next. */
export function billRows(property, fleet) {
  if (!['bills', 'both'].includes(property.metering)) return [];
  const dice = diceFor(`bills ${fleet.seed} ${property.name}`);
  const included = dice.uniform() < 0.4;
  return property.meters.flatMap((meter) => {
    const unit = meter.unit === 'gal' ? 'kgal' : meter.unit;
    const days = [];
    const [begin, end] = [meter.installed ?? fleet.from + dice.whole(0, 20), meter.removed ?? fleet.last];
    for (let day = begin; day <= end; day += dice.whole(28, 33)) days.push(day);
    const units = (day) => Math.floor((meter.bias * meter.line.until(startOfDay(day))) / GALLONS[unit]);
    return days
      .slice(1)
      .map((day, index) => [
        ...[property.name, meter.name, dateText(days[index]), dateText(included ? day - 1 : day), included ? 'yes' : 'no'],
        ...[units(day) - units(days[index]), unit, ''],
      ]);
  });
}

function holesOf(fleet, dice) {
  return Array.from({ length: dice.whole(0, 5) }, () => {
    const from = startOfDay(dice.whole(fleet.from, fleet.last)) + dice.whole(0, 23) * 60;
    return { from, until: from + dice.whole(2, 60) * 60 };
  });
}

const OFFSETS = { 'America/Los_Angeles': ['-07:00', '-08:00'], 'America/Chicago': ['-05:00', '-06:00'] };

/** The rows of an hour: none where the clock skips it, two where it comes twice. Each has start, end and its share of the hour's water. */
function spansOf(minute, zone) {
  const [day, hour] = [Math.floor(minute / 1440), (minute % 1440) / 60];
  if (isSpringForward(day, zone)) {
    if (hour === 2) return [];
    if (hour === 1) return [[instantText(minute), instantText(minute + 120), 0, 1]];
  }
  if (hour === 1 && isFallBack(day, zone)) {
    const [summer, winter] = OFFSETS[zone];
    const at = instantText(minute);
    return [
      [at + summer, at + winter, 0, 0.5],
      [at + winter, instantText(minute + 60), 0.5, 1],
    ]; // prettier-ignore
  }
  return [[instantText(minute), instantText(minute + 60), 0, 1]];
}

function feedOf(meter, property, fleet, dice) {
  const holes = holesOf(fleet, dice);
  const silent = property.faults.filter((fault) => fault.silent && fault.meter === meter.name);
  const unit = meter.unit === 'gal' || meter.unit === 'ft3' ? meter.unit : 'gal';
  const step = meter.multiplier * meter.resolution * (unit === meter.unit ? 1 : GALLONS[meter.unit]);
  const steps = (minute) => Math.floor((meter.bias * meter.line.until(minute)) / GALLONS[unit] / step + 1e-9);
  const rows = [];
  for (let minute = startOfDay(fleet.from); minute < startOfDay(fleet.last + 1); minute += 60) {
    if (holes.some(({ from, until }) => minute >= from && minute < until)) continue;
    const still = silent.some((fault) => minute >= fault.start && minute < fault.end);
    for (const [start, end, begin, until] of spansOf(minute, property.station.timeZone)) {
      const volume = still ? 0 : (steps(minute + 60 * until) - steps(minute + 60 * begin)) * step;
      rows.push([property.name, meter.name, start, end, Number(volume.toFixed(3)), unit]);
      if (dice.uniform() < 0.0005) rows.push(rows.at(-1));
    }
  }
  return rows;
}

/** Rows of usage.csv: hour by hour, with holes, rows that came twice, and days on which the feed stood still. */
export function usageRows(property, fleet) {
  if (!property.fed) return [];
  const dice = diceFor(`feed ${fleet.seed} ${property.name}`);
  return property.meters.flatMap((meter) => feedOf(meter, property, fleet, dice));
}
