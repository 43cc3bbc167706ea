// Weather stations and their days, and the suppliers' rules and rates.
import { dateText } from '../sky/calendar.mjs';
import { diceFor } from '../sky/random.mjs';
import { vapourPressure } from '../sky/reference-eto.mjs';
import { trimmed } from './csv.mjs';

export const stations = (world) => ({
  header: ['station', 'latitude', 'longitude', 'elevation_ft'],
  rows: world.stations.map((station) => [station.name, station.latitude, station.longitude, station.elevationFt]),
});

const fahrenheit = (celsius) => (celsius * 1.8 + 32).toFixed(1);

/** Wind at a height other than 2 m (FAO-56 Eq. 47 the other way round), miles an hour. */
const windAt = (metres2, heightM) => (metres2 * Math.log(67.8 * heightM - 5.42)) / 4.87 / 0.44704;

function airCells(day, dice) {
  const vapour = vapourPressure(day.dewC);
  const rhmax = Math.min(100, (100 * vapour) / vapourPressure(day.tminC)).toFixed(0);
  const rhmin = ((100 * vapour) / vapourPressure(day.tmaxC)).toFixed(0);
  const lost = dice.uniform() < 0.01;
  return lost ? ['', '', ''] : [rhmax, rhmin, fahrenheit(day.dewC)];
}

function fullRow(station, day, dice) {
  const wind = dice.uniform() < 0.012 ? '' : windAt(day.windMs, 3.048).toFixed(1);
  const sun = dice.uniform() < 0.012 ? '' : day.solar.toFixed(2);
  const rain = station.rainLost?.includes(dateText(day.day)) ? '' : (day.rain / 25.4).toFixed(2);
  const eto = sun === '' ? trimmed(day.eto / 25.4, 2) : '';
  const heat = [fahrenheit(day.tmaxC), fahrenheit(day.tminC)];
  return [station.name, dateText(day.day), ...heat, ...airCells(day, dice), wind, wind === '' ? '' : 10, sun, rain, eto];
}

function plainRow(station, day, dice) {
  const rain = station.rainLost?.includes(dateText(day.day)) ? '' : (day.rain / 25.4).toFixed(2);
  const heat = dice.uniform() < 0.006 ? ['', ''] : [fahrenheit(day.tmaxC), fahrenheit(day.tminC)];
  return [station.name, dateText(day.day), ...heat, '', '', '', '', '', '', rain, ''];
}

export const weather = (world) => ({
  header: [
    ...['station', 'date', 'tmax_f', 'tmin_f', 'rhmax', 'rhmin', 'dewpoint_f', 'wind_mph', 'wind_height_ft', 'solar_mj_m2'],
    ...['rain_in', 'eto_in'],
  ],
  rows: world.stations.flatMap((station) => {
    const dice = diceFor(`sensors ${station.name}`);
    const row = station.sensors === 'all' ? fullRow : plainRow;
    return world.weatherOfStation.get(station.name).map((day) => row(station, day, dice));
  }),
});

const RULE_COLUMNS = [
  ...['allowed_days', 'days_per_week', 'address_parity', 'blocked_from', 'blocked_until', 'max_minutes', 'hours_after_rain', 'rain_in'],
  ...['plants', 'exempt_methods', 'water', 'effective_from', 'effective_until'],
];

export const rules = (world) => ({
  header: ['rule', 'water_supplier', ...RULE_COLUMNS],
  rows: world.suppliers.flatMap((supplier) =>
    supplier.rules.map((rule) => [rule.name, supplier.name, ...RULE_COLUMNS.map((column) => rule[column] ?? '')]),
  ),
});

export const rates = (world) => ({
  header: ['water_supplier', 'effective_from', 'fixed', 'tier', 'up_to', 'up_to_is', 'unit', 'price'],
  rows: world.suppliers.flatMap((supplier) =>
    supplier.rates.flatMap((rate) =>
      rate.tiers.map(({ upTo, price }, index) => [
        ...[supplier.name, rate.from, rate.fixed.toFixed(2), index + 1, upTo ?? ''],
        ...[upTo === undefined ? '' : rate.shares ? 'share of allowance' : 'volume', supplier.billUnit, price.toFixed(2)],
      ]),
    ),
  ),
});
