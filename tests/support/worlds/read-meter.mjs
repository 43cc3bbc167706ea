// A meter that is read once a month for some years, with seasons, and what people do wrong when they read it. Drawn from a seed; invented.
import { drawsOf, normalOf } from './monthly-meter.mjs';

const FIRST_DAY = 19_723;
const LITRES_PER_UNIT = 1000;

/** Readings without mistakes: register in m³, a summer's day of `perDay` units, next to nothing in winter, from `start` on. */
export function readMeter(seed, changes = {}) {
  const world = { readings: 36, digits: 5, perDay: 10, start: null, summerShare: 0.95, ...changes };
  const draw = drawsOf(seed);
  const top = 10 ** world.digits;
  const rate = world.perDay * Math.exp(0.3 * normalOf(draw));
  const phase = Math.floor(draw() * 365);
  const perDay = (day) => rate * (1 - world.summerShare * Math.cos((2 * Math.PI * (day + phase)) / 365.25));
  let total = world.start ?? Math.floor(draw() * top);
  let day = 0;
  const readings = Array.from({ length: world.readings }, (_, index) => {
    const length = index === 0 ? 0 : 28 + Math.floor(draw() * 6);
    let used = 0;
    for (let at = day; at < day + length; at += 1) used += perDay(at);
    day += length;
    total += used * (1 + 0.1 * normalOf(draw));
    return { localDay: FIRST_DAY + day, register: Math.floor(total) % top };
  });
  const demandLitres = (from, until) => {
    let units = 0;
    for (let at = from; at < until; at += 1) units += perDay(at - FIRST_DAY);
    return units * LITRES_PER_UNIT * 0.9;
  };
  return { meterId: 'm1', digits: world.digits, litresPerRegisterUnit: LITRES_PER_UNIT, readings, others: [], demandLitres };
}

const digitsOf = (register, digits) => Array.from(String(register).padStart(digits, '0'));

/** What people write instead of a register, by name; each takes the register, the one before, and draws. */
export const mistakes = {
  swapped: ({ register }, digits, draw) => {
    const written = digitsOf(register, digits);
    const at = Math.floor(draw() * (digits - 1));
    [written[at], written[at + 1]] = [written[at + 1], written[at]];
    return Number(written.join(''));
  },
  mistyped: ({ register }, digits, draw) => {
    const written = digitsOf(register, digits);
    written[Math.floor(draw() * digits)] = String(Math.floor(draw() * 10));
    return Number(written.join(''));
  },
  tenfold: ({ register }) => register * 10,
  tenth: ({ register }) => register / 10,
  gallons: ({ register }) => Math.round(register * 7.48052),
  cubicFeet: ({ register }) => Math.round(register / 7.48052),
  hundreds: ({ register }) => Math.round(register / 748.052),
};

/** The series with one reading written wrong. */
export function misread(series, at, mistake, draw) {
  const register = mistakes[mistake](series.readings[at], series.digits, draw);
  return { ...series, readings: series.readings.map((reading, index) => (index === at ? { ...reading, register } : reading)) };
}
