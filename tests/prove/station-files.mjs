// Daily and hourly files of Fallon, Nevada, 2015 (USBR AgriMet), read by the parsers of station files: every day of the daily file against
// the values in SI that the reference ET calculator of the University of Idaho printed from the same file, each within half of its last
// printed digit; and the hours, put together to days, beside the daily values of the network.
import { createReadStream, readFileSync } from 'node:fs';
import path from 'node:path';
import { csvTable } from '../../apps/api/dist/features/exchange/files/csv-table.js';
import { nothingKnown } from '../../apps/api/dist/features/exchange/drafts/known.js';
import { readImport } from '../../apps/api/dist/features/exchange/rows/read-import.js';

export const readsShared = true;

const SHARED = path.join(import.meta.dirname, '../../../shared/data/weather');
const COLUMNS = ['tmaxC', 'tminC', 'solarMjPerM2', 'windMPerS', 'dewPointC'];
/** The calculator's mile an hour is a little less than 0.44704 m/s: 3.77 mph are printed as 1.68 m/s. */
const SLACK = 1.1;
/** How far the mean of all days may lie between the hours and the network's own days. Common practice, no source. */
const MEAN_APART = { tmaxC: 1.5, tminC: 1.5, solarMjPerM2: 0.6, windMPerS: 0.15, dewPointC: 0.3 };

async function daysOf(name) {
  const table = csvTable({ name, open: () => createReadStream(path.join(SHARED, name)) });
  const source = { tables: [{ ...table, meaning: { station: 'Fallon', windHeightM: 3 } }], refused: [] };
  const days = new Map();
  for await (const file of readImport(source, { ...nothingKnown('America/Los_Angeles'), stations: ['Fallon'] })) {
    if (file.status !== 'read') throw new Error(`${name} was refused: ${JSON.stringify(file.problems)}`);
    for await (const batch of file.batches())
      for (const row of batch) {
        if (row.verdict !== 'accepted') throw new Error(`${name}, line ${row.line}: ${JSON.stringify(row.problems)}`);
        days.set(row.values.day, row.values);
      }
  }
  return days;
}

/** The printed table: month, day, year, then the values as texts, whose last digit counts. */
function printed() {
  const rows = new Map();
  for (const line of readFileSync(path.join(SHARED, 'FALN_Agrimet_daily_raw_2015.out'), 'utf8').split('\n')) {
    const [month, day, year, ...values] = line.trim().split(/\s+/);
    if (!/^\d{1,2}$/.test(month) || year !== '2015') continue;
    rows.set(`${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`, values);
  }
  return rows;
}

const half = (text) => 0.5 * 10 ** -(text.split('.')[1] ?? '').length;

function compareDaily(days) {
  let compared = 0;
  for (const [day, values] of printed()) {
    const ours = days.get(day);
    if (!ours) throw new Error(`${day} is not among the days`);
    COLUMNS.forEach((column, at) => {
      const off = Math.abs(ours[column] - Number(values[at]));
      if (off > half(values[at]) * SLACK) throw new Error(`${day}: ${column} is ${ours[column]}, printed ${values[at]}`);
      compared += 1;
    });
  }
  return compared;
}

export async function prove() {
  const daily = await daysOf('FALN_Agrimet_daily_raw_2015.csv');
  const hourly = await daysOf('FALN_Agrimet_hourly_raw_2015.csv');
  const compared = compareDaily(daily);
  const apart = COLUMNS.map((column) => {
    const both = [...hourly].filter(([day, values]) => values[column] !== null && daily.get(day)?.[column] != null);
    const mean = both.reduce((sum, [day, values]) => sum + Math.abs(values[column] - daily.get(day)[column]), 0) / both.length;
    if (!(mean <= MEAN_APART[column])) throw new Error(`${column}: hours and days lie ${mean} apart`);
    return `${column} ${mean.toFixed(3)} (${both.length} days)`;
  });
  return `${daily.size} days of the daily file, ${compared} values as printed; mean distance of the days made of hours: ${apart.join(', ')}`;
}
