// What is written down of a site's water: registers, bills and feeds.
import { chanceOf, dateOf, instantOf } from './chance.mjs';
import { GALLONS } from './styles.mjs';

const DAY = 1440;
const SLOT = 15;
const MISREADS = [
  (register, _, chance) => register + chance.of([-1, 1]) * 10 ** chance.whole(2, 3) * chance.whole(1, 8),
  (register) => register * 10,
  (register) => Math.floor(register / 10),
];

/** Rows of readings, bills and usage of a site, and its rollovers. */
export function registersOf(site, firstDay) {
  const { style, slots, bias, days } = site;
  const chance = chanceOf(`read ${site.name} ${site.seed}`);
  const unit = GALLONS[style.dial.unit] * style.dial.multiplier;
  const sums = new Float64Array(slots.length + 1);
  slots.forEach((gallons, at) => {
    sums[at + 1] = sums[at] + gallons * bias;
  });
  const passed = (minute) => {
    const at = Math.min(slots.length, Math.max(0, (minute - firstDay * DAY) / SLOT));
    const slot = Math.min(slots.length - 1, Math.floor(at));
    return sums[slot] + (at - slot) * (sums[slot + 1] - sums[slot]);
  };
  const place = { site, chance, unit, passed, firstDay, days };
  return { ...readingsOf(place), bills: billsOf(place), usage: usageOf(place) };
}

function readingsOf({ site, chance, unit, passed, firstDay, days }) {
  const { every, dial } = site.style;
  const full = 10 ** dial.digits;
  const decimals = Math.max(0, Math.round(-Math.log10(dial.resolution)));
  const rollovers = [];
  const readings = [];
  let turns = 0;
  for (let day = 0; every && day < days; day += chance.whole(...every)) {
    const minute = (firstDay + day) * DAY + chance.whole(540, 960);
    const steps = Math.floor((site.first * full + passed(minute) / unit) / dial.resolution + 1e-9);
    const whole = Math.round(full / dial.resolution);
    const turned = Math.floor(steps / whole);
    if (turned > turns) rollovers.push(minute);
    turns = turned;
    readings.push({ minute, register: (steps % whole) * dial.resolution });
  }
  misreadOne(site, readings, chance, full);
  const rows = readings.map(({ minute, register }) => [site.name, 'Meter', instantOf(minute), register.toFixed(decimals), 'crew']);
  return { readings: rows, rollovers };
}

/** A slip that fits the dial and is a fifth of the month at least; else there is none. */
function misreadOne({ trouble, usual, style }, readings, chance, full) {
  if (!trouble?.misread) return;
  const at = readings.findIndex(({ minute }, index) => index > 3 && index < readings.length - 1 && minute >= trouble.begin);
  const least = (0.2 * usual) / (GALLONS[style.dial.unit] * style.dial.multiplier);
  for (let attempt = 0; at > 0 && attempt < 20; attempt += 1) {
    const wrong = chance.of(MISREADS)(readings[at].register, at, chance);
    if (!(wrong >= 0 && wrong < full && Math.abs(wrong - readings[at].register) > least)) continue;
    trouble.felt = readings[at].minute;
    readings[at] = { ...readings[at], register: wrong };
    return;
  }
}

function billsOf({ site, chance, unit, passed, firstDay, days }) {
  const { bills, dial } = site.style;
  if (!bills) return [];
  const ends = [];
  for (let day = chance.whole(0, 20); day < days; day += chance.whole(...bills)) ends.push(firstDay + day);
  const read = (day) => Math.floor(passed(day * DAY) / unit);
  return ends.slice(1).map((day, at) => [site.name, 'Meter', dateOf(ends[at]), dateOf(day), read(day) - read(ends[at]), dial.unit]);
}

/** Water goes by the property's own clock without the two changes a year: the hour that is skipped or comes twice is left out. */
function usageOf({ site, chance, unit, passed, firstDay, days }) {
  const { feed, feedFrom, dial } = site.style;
  if (!feed) return [];
  const rows = [];
  const steps = (minute) => Math.floor(passed(minute) / unit / dial.resolution + 1e-9);
  const begin = (firstDay + Math.round(feedFrom * days)) * DAY;
  for (let minute = begin; minute < (firstDay + days) * DAY; minute += feed) {
    const hour = Math.floor((minute % DAY) / 60);
    if (hour >= 1 && hour <= 2 && isChange(Math.floor(minute / DAY))) continue;
    if (chance.next() < 0.002) continue;
    const volume = (steps(minute + feed) - steps(minute)) * dial.resolution * dial.multiplier;
    rows.push([site.name, 'Meter', instantOf(minute), instantOf(minute + feed), Number(volume.toFixed(3)), dial.unit]);
  }
  return rows;
}

/** Second Sunday of March and first of November. */
function isChange(day) {
  const date = new Date(day * 86_400_000);
  const nth = Math.ceil(date.getUTCDate() / 7);
  return date.getUTCDay() === 0 && ((date.getUTCMonth() === 2 && nth === 2) || (date.getUTCMonth() === 10 && nth === 1));
}
