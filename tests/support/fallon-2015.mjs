// The real weather year of Fallon, Nevada, 2015 (USBR AgriMet), and what the reference ET calculator of the University of Idaho
// (version 4.1) made of it, by the day and by the hour: read where the published files lie, beside the checkout.
import { readFileSync } from 'node:fs';
import path from 'node:path';

const data = path.resolve(import.meta.dirname, '../../../shared/data/weather');
const MISSING = -999;
const YEAR = '2015';

const text = (name) => readFileSync(path.join(data, name), 'utf8');

/** A cell of measured values as a number; null where the station has none. */
const number = (cell) => (cell === '' || !Number.isFinite(Number(cell)) || Number(cell) === MISSING ? null : Number(cell));

function table(name) {
  const [head, ...lines] = text(name).trim().split(/\r?\n/);
  const names = head.split(',').map((each) => each.trim());
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, at) => [names[at], cell.trim()])));
}

/** Rows of an output file that begin with month, day and year. */
const printed = (name) =>
  text(name)
    .split(/\r?\n/)
    .map((line) => line.trim().split(/\s+/))
    .filter(([month, day, year]) => /^\d{1,2}$/.test(month) && /^\d{1,2}$/.test(day) && year === YEAR);

const dateOf = ([month, day]) => `${YEAR}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;

/** Where and how high it stands, and the longitude of its clock. */
export const fallon = { latitude: 39.4575, longitude: -118.77388, zoneLongitude: -120, elevation: 1208.5, windHeight: 3 };

/** The measured days: temperatures and dew point in °F, solar in langleys, wind in mph. */
export const measuredDays = () =>
  table('FALN_Agrimet_daily_raw_2015.csv').map((row) => ({
    date: `${row.YEAR}-${row.MONTH}-${row.DAY}`,
    tmin: number(row.MN),
    tmax: number(row.MX),
    solar: number(row.SR),
    dewPoint: number(row.YM),
    wind: number(row.UA),
  }));

/** The printed days by date: wind [m/s], ETr and ETo [mm]. */
export const printedDays = () =>
  new Map(
    printed('FALN_Agrimet_daily_raw_2015.out').map((cells) => [
      dateOf(cells),
      { wind: Number(cells[6]), etr: Number(cells[8]), eto: Number(cells[9]) },
    ]),
  );

/** The measured hours, `label` the end of the hour on Pacific Standard Time: the same units, mean temperature. */
export const measuredHours = () =>
  table('FALN_Agrimet_hourly_raw_2015.csv').map((row) => ({
    date: `${row.YEAR}-${row.MONTH}-${row.DAY}`,
    label: Number(row.HOUR),
    temperature: number(row.OB),
    dewPoint: number(row.TP),
    wind: number(row.WS),
    solar: number(row.SI),
  }));

/** The printed hours by date and label, as `2015-07-01 10`: ETr and ETo [mm]. */
export const printedHours = () =>
  new Map(
    printed('FALN_Agrimet_hourly_raw_2015.out').map((cells) => [
      `${dateOf(cells)} ${Number(cells[4]) / 100}`,
      { etr: Number(cells[10]), eto: Number(cells[11]) },
    ]),
  );
