// The true weather of a station, day by day, in one of three climates, and what the station wrote down of it.
import { dateText, dayOfYear } from '../../../../apps/api/demo/generator/sky/calendar.mjs';
import { diceFor } from '../../../../apps/api/demo/generator/sky/random.mjs';
import { clearRadiation, referenceEto, vapourPressure } from '../../../../apps/api/demo/generator/sky/reference-eto.mjs';

const MM_PER_IN = 25.4;

/** Invented climates: means and swings in degC, chance and mean of rain from January to December. */
const CLIMATES = {
  'dry summer': {
    ...{ timeZone: 'America/Los_Angeles', latitude: 38.05, longitude: -120.9, clear: 0.9 },
    ...{ warmest: [24, 10.5], coolest: [9.6, 6], dew: [7, 4], wind: 1.8 },
    wet: [0.3, 0.29, 0.26, 0.16, 0.07, 0.02, 0.005, 0.005, 0.03, 0.1, 0.22, 0.29],
    wetMm: [9, 9, 8, 7, 5, 3, 2, 2, 5, 7, 9, 9],
  },
  desert: {
    ...{ timeZone: 'America/Phoenix', latitude: 33.4, longitude: -112.3, clear: 0.95 },
    ...{ warmest: [30.5, 10.5], coolest: [16, 9.5], dew: [4, 6], wind: 2.1 },
    wet: [0.1, 0.1, 0.09, 0.04, 0.02, 0.01, 0.12, 0.14, 0.09, 0.06, 0.06, 0.1],
    wetMm: [6, 6, 6, 4, 3, 3, 7, 8, 8, 7, 6, 6],
  },
  'wet summer': {
    ...{ timeZone: 'America/Chicago', latitude: 32.9, longitude: -97.1, clear: 0.78 },
    ...{ warmest: [25, 11], coolest: [13.5, 10.5], dew: [11, 9], wind: 2.9 },
    wet: [0.2, 0.21, 0.24, 0.25, 0.29, 0.23, 0.15, 0.15, 0.2, 0.22, 0.2, 0.2],
    wetMm: [8, 9, 10, 11, 13, 12, 9, 9, 11, 13, 9, 9],
  },
};

export const climateNames = Object.keys(CLIMATES);

const season = (day, peak) => Math.cos((2 * Math.PI * (dayOfYear(day) - peak)) / 365);
const monthAt = (day) => Number(dateText(day).slice(5, 7)) - 1;

function rainOf(day, climate, dice, wetBefore) {
  const chance = climate.wet[monthAt(day)] * (wetBefore ? 1.8 : 0.75);
  const amount = climate.wetMm[monthAt(day)] * (dice.uniform() + dice.uniform() ** 3 * 2);
  return dice.uniform() < chance ? Math.max(0.3, amount) : 0;
}

function clearness(climate, dice, rain) {
  if (rain > 3) return dice.between(0.25, 0.5);
  if (rain > 0) return dice.between(0.5, 0.75);
  return Math.min(1, Math.max(0.35, climate.clear + 0.06 * dice.normal()));
}

function airOf(day, climate, dice, spell, rain) {
  const cool = rain > 3 ? 4 : rain > 0 ? 2 : 0;
  const tmaxC = climate.warmest[0] + climate.warmest[1] * season(day, 204) + spell - cool;
  const tminC = Math.min(climate.coolest[0] + climate.coolest[1] * season(day, 207) + 0.55 * spell + dice.normal(), tmaxC - 3);
  const dewC = Math.min(climate.dew[0] + climate.dew[1] * season(day, 215) + 1.6 * dice.normal() + cool, tminC + 0.6);
  const windMs = Math.max(0.6, (climate.wind + 0.4 * season(day, 130)) * (1 + 0.2 * dice.normal()));
  return { day, tmaxC, tminC, dewC, windMs, rain };
}

/**
 * @param fleet its seed, first day of weather and last day
 * @param index which station of the fleet
 * @param {string} climateName one of `climateNames`
 */
export function stationOf(fleet, index, climateName) {
  const climate = CLIMATES[climateName];
  const dice = diceFor(`station ${fleet.seed} ${index}`);
  const place = { latitude: climate.latitude + 0.03 * index, elevationM: Math.round(dice.between(20, 500)) };
  const days = [];
  let spell = 0;
  let rain = 0;
  for (let day = fleet.weatherFrom; day <= fleet.last; day += 1) {
    spell = 0.74 * spell + 1.9 * dice.normal();
    rain = rainOf(day, climate, dice, rain > 0);
    const air = airOf(day, climate, dice, spell, rain);
    const weather = { ...air, solar: clearness(climate, dice, rain) * clearRadiation(day, place) };
    days.push({ ...weather, eto: referenceEto(weather, place) });
  }
  const sensors = index % 3 === 2 ? 'eto' : 'all';
  return { name: `Station ${index + 1}`, ...place, longitude: climate.longitude, timeZone: climate.timeZone, sensors, days };
}

const fahrenheit = (celsius) => (celsius * 1.8 + 32).toFixed(1);
/** Wind at 10 ft from wind at 2 m, in miles an hour (FAO-56 Eq. 47 the other way round). */
const windAt10Ft = (metres) => (metres * Math.log(67.8 * 3.048 - 5.42)) / 4.87 / 0.44704;
const percent = (dewC, airC) => Math.min(100, (100 * vapourPressure(dewC)) / vapourPressure(airC)).toFixed(0);

function fullRow(station, day, dice) {
  const lost = () => dice.uniform() < 0.006;
  return [
    ...[station.name, dateText(day.day), fahrenheit(day.tmaxC), fahrenheit(day.tminC), percent(day.dewC, day.tminC)],
    ...[percent(day.dewC, day.tmaxC), fahrenheit(day.dewC), lost() ? '' : windAt10Ft(day.windMs).toFixed(1), 10],
    ...[lost() ? '' : day.solar.toFixed(2), (day.rain / MM_PER_IN).toFixed(2), ''],
  ];
}

const etoRow = (station, day) => [
  ...[station.name, dateText(day.day), '', '', '', '', '', '', '', ''],
  ...[(day.rain / MM_PER_IN).toFixed(2), (day.eto / MM_PER_IN).toFixed(3)],
];

export const weatherTable = ({ seed, stations }) => ({
  header: [
    ...['station', 'date', 'tmax_f', 'tmin_f', 'rhmax', 'rhmin', 'dewpoint_f', 'wind_mph', 'wind_height_ft', 'solar_mj_m2'],
    ...['rain_in', 'eto_in'],
  ],
  rows: stations.flatMap((station) => {
    const dice = diceFor(`sensors ${seed} ${station.name}`);
    return station.days.map((day) => (station.sensors === 'all' ? fullRow(station, day, dice) : etoRow(station, day)));
  }),
});
