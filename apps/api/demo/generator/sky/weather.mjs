// A dry-summer valley, day by day: seasons, warm and cool spells, storms in the cold half of the year.
import { dateText, dayOfYear, LAST_DAY, WEATHER_FROM } from './calendar.mjs';
import { diceFor } from './random.mjs';
import { clearRadiation, referenceEto } from './reference-eto.mjs';

const WET_SHARE = [0.3, 0.29, 0.26, 0.16, 0.07, 0.02, 0.004, 0.006, 0.03, 0.1, 0.22, 0.29];
const WET_MEAN_MM = [9, 9, 8, 7, 5, 3, 2, 2, 5, 7, 9, 9];

// The summer of 2026 is written by hand, because the stories need its few showers on known days (mm).
const WRITTEN_FROM = '2026-05-28';
const WRITTEN_RAIN = new Map([
  ['2026-06-07', 1.4],
  ['2026-08-19', 0.7],
  ['2026-09-12', 7.2],
  ['2026-09-13', 0.5],
]);

const season = (day, peak) => Math.cos((2 * Math.PI * (dayOfYear(day) - peak)) / 365);

function rainOf(day, dice, wetBefore) {
  const month = Number(dateText(day).slice(5, 7)) - 1;
  const chance = WET_SHARE[month] * (wetBefore ? 1.9 : 0.72);
  const wet = dice.uniform() < chance;
  const amount = WET_MEAN_MM[month] * (dice.uniform() + dice.uniform() ** 3 * 2);
  if (dateText(day) >= WRITTEN_FROM) return WRITTEN_RAIN.get(dateText(day)) ?? 0;
  return wet ? Math.max(0.3, amount) : 0;
}

function clearness(day, dice, rain) {
  if (rain > 3) return dice.between(0.25, 0.5);
  if (rain > 0) return dice.between(0.5, 0.75);
  const fog = 0.16 * Math.max(0, season(day, 5));
  return Math.min(1, Math.max(0.35, 0.96 - fog + dice.normal() * (0.025 + fog * 0.6)));
}

function dayOfValley(day, dice, spell, rain) {
  const cool = rain > 3 ? 4 : rain > 0 ? 2 : 0;
  const tmaxC = 24.2 + 10.6 * season(day, 204) + spell - cool;
  const tminC = Math.min(9.6 + 6.1 * season(day, 207) + 0.55 * spell + dice.normal() + cool * 0.4, tmaxC - 3);
  const dewC = Math.min(7 + 3.8 * season(day, 215) + 0.25 * spell + 1.6 * dice.normal() + cool * 0.8, tminC + 0.6);
  const windMs = Math.max(0.6, (1.72 + 0.45 * season(day, 150)) * (1 + 0.2 * dice.normal()));
  return { day, tmaxC, tminC, dewC, windMs, rain };
}

/** The valley's own weather: what every station sees, each in its way. */
export function valleyWeather(name) {
  const dice = diceFor(`valley ${name}`);
  const days = [];
  let spell = 0;
  let rain = 0;
  for (let day = WEATHER_FROM; day <= LAST_DAY; day += 1) {
    spell = 0.74 * spell + 1.9 * dice.normal();
    rain = rainOf(day, dice, rain > 0);
    const weather = dayOfValley(day, dice, spell, rain);
    days.push({ ...weather, clearness: clearness(day, dice, rain) });
  }
  return days;
}

/** One station's true weather: a little warmer or cooler, a little wetter or drier, with its reference evapotranspiration. */
export function weatherAt(station, valley) {
  const dice = diceFor(`station ${station.name}`);
  const place = { latitude: station.latitude, elevationM: station.elevationFt * 0.3048 };
  return valley.map((seen) => {
    const shift = station.warmer + 0.25 * dice.normal();
    const weather = { ...seen, tmaxC: seen.tmaxC + shift, tminC: seen.tminC + shift + 0.2 * dice.normal(), dewC: seen.dewC + 0.5 * shift };
    weather.rain = seen.rain === 0 ? 0 : Math.max(0.1, seen.rain * station.wetter * (1 + 0.08 * dice.normal()));
    weather.windMs = seen.windMs * station.windier;
    weather.solar = seen.clearness * clearRadiation(seen.day, place);
    return { ...weather, eto: referenceEto(weather, place) };
  });
}

/** Rainy spells worth a pause: days in a row with rain, at least a quarter inch in all. */
export function storms(weather) {
  const found = [];
  for (const { day, rain } of weather) {
    if (rain < 2.5) continue;
    const last = found.at(-1);
    if (last && day - last.to <= 1) Object.assign(last, { to: day, rain: last.rain + rain });
    else found.push({ from: day, to: day, rain });
  }
  return found.filter((storm) => storm.rain >= 6.4);
}
