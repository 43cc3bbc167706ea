// What a crew reads off the dial: whole steps of the dial, which starts again at zero when it is full.
import { dateText, dayOf, instantText, minuteOf, startOfDay } from '../sky/calendar.mjs';
import { diceFor } from '../sky/random.mjs';

export const GALLONS = { CCF: 748.0519, HCF: 748.0519, kgal: 1000, gal: 1, ft3: 7.480519, m3: 264.172052, L: 0.264172052 };

const decimals = (resolution) => Math.max(0, Math.round(-Math.log10(resolution)));

export function registerText(meter, value) {
  const steps = Math.floor(value / meter.resolution + 1e-9);
  const full = Math.round(10 ** meter.digits / meter.resolution);
  return ((steps % full) * meter.resolution).toFixed(decimals(meter.resolution));
}

/** The dial's value at a minute, before it is cut to its steps. */
function dialAt(meter, minute) {
  const from = meter.installed ? minuteOf(meter.installed) : minuteOf('2025-06-28T00:00');
  const gallons = meter.flow.until(minute) - meter.flow.until(from);
  return meter.first + gallons / (GALLONS[meter.unit] * (meter.multiplier ?? 1));
}

export const registerAt = (meter, minute) => registerText(meter, dialAt(meter, minute));

/** Two neighbouring digits the wrong way round, so that the register seems to have run backwards. */
function withDigitsSwapped(text) {
  for (let at = 1; at < text.indexOf('.') - 1; at += 1) {
    if (text[at] > text[at + 1]) return text.slice(0, at) + text[at + 1] + text[at] + text.slice(at + 2);
  }
  throw new Error(`The register ${text} has no two digits that could be swapped downwards: give the meter another first register.`);
}

function minutesOf(meter, property, dice) {
  const minutes = property.visits.map((visit) => visit.at + dice.whole(2, 9));
  if (property.weekly) {
    for (let day = dayOf('2026-08-11'); day <= dayOf('2026-09-16'); day += 7) minutes.push(startOfDay(day) + dice.whole(620, 900));
  }
  minutes.push(...(property.extraReadings ?? []).map(minuteOf));
  const { readFrom = '2000-01-01T00:00', readUntil = '2999-01-01T00:00' } = property;
  const begin = Math.max(minuteOf(readFrom), meter.installed ? minuteOf(meter.installed) : 0);
  const end = Math.min(minuteOf(readUntil), meter.removed ? minuteOf(meter.removed) : Number.POSITIVE_INFINITY);
  return minutes.filter((minute) => minute > begin && minute < end).sort((one, other) => one - other);
}

/** @returns rows of readings.csv */
export function readingRows(meter, property) {
  const dice = diceFor(`readings ${property.name} ${meter.name}`);
  const minutes = minutesOf(meter, property, dice);
  return minutes.map((minute) => {
    const misread = property.misread === dateText(Math.floor(minute / 1440));
    const register = registerAt(meter, minute);
    const note = property.readingNotes?.[instantText(minute).slice(0, 10)] ?? '';
    return [property.name, meter.name, instantText(minute), misread ? withDigitsSwapped(register) : register, 'crew', note];
  });
}
